import type { HeadOfCost } from '../model/price-book.js';

/** What each head of cost is called, before the event and after it, on a screen and on paper. */
export const headTitles: Readonly<Record<HeadOfCost, string>> = {
  'operator-delay': 'Delay to trains',
  standing: 'Standing plant and labour',
  fixed: 'Fixed charge',
  'late-opening': 'Late opening charge',
  restriction: 'Speed restriction',
  're-booking': 'Booking the lost work again',
  'key-dates': 'Key date missed',
  damages: 'Delay damages',
};
