import type { HeadOfCost } from '../model/price-book.js';

/** Titles of the heads of cost, for forecast and account, on screen and paper. */
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
