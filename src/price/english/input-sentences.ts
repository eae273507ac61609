// English for the numbers that an amount of money is worked out from, and for their units.
type At = {
  readonly minutes: number;
};

export const inputSentences = {
  'input-minutes-charged': () => 'minutes charged',
  'input-grace': () => 'grace',
  'input-blocks': () => 'started blocks of',
  'input-rate': () => 'rate',
  'input-cap': () => 'cap',
  'input-threshold': () => 'threshold',
  'input-charge': () => 'charge',
  'input-counted': () => 'counted',
  'input-holiday-hours': () => 'public holiday hours',
  'input-days-late': () => 'days or parts of days late',
  'input-minutes-late': () => 'minutes late',
  'input-a-day': () => 'a day',
  'input-once': () => 'once',
  'input-not-more': () => 'not more than',
  'input-full-rate': () => 'full rate',
  'input-intervals': ({ minutes, percent }: At & { readonly percent: string }) =>
    `intervals begun after ${minutes} min, at ${percent} %`,
  'input-trains-late': () => 'trains late',
  'input-trains-cancelled': () => 'trains cancelled',
  'input-weighted-minutes': () => 'weighted minutes',
  'input-headway': () => 'headway',
  'input-minutes-after': ({ minutes }: At) => `minutes after ${minutes}`,
  'input-rate-after': ({ minutes }: At) => `rate after ${minutes}`,
  'input-left-over': () => 'left over',
  'input-price-of-one': () => 'price of one',
  'input-trains-until-lifted': () => 'trains until lifted',
  'input-sum-of-weights': () => 'sum of weights',
  'input-minutes-lost': () => 'minutes lost',
  'input-lifted-after': () => 'lifted after',
  'input-amount': () => 'amount',
  'input-minutes-paid': () => 'minutes paid',
  'input-minutes-at-factor': ({ factor }: { readonly factor: string }) =>
    `minutes at factor ${factor}`,
  'input-least-hours': () => 'least hours',
  'input-minutes-with-factors': () => 'minutes with factors',
  'input-minutes-booked': () => 'minutes booked',
  'input-price-of-hour': () => 'price of an hour',
  'input-price-of-window': () => 'price of a window',
  'input-notice-factor': () => 'factor of notice',
  'input-further-visits': () => 'further visits',
  'input-price-of-visit': () => 'price of a visit',
  'input-recorded': () => 'recorded',
  'input-minutes': () => 'minutes',
  'input-weight': () => 'weight',

  'holidays-counted': () => 'counted',
  'holidays-not-counted': () => 'not counted',
  'unit-trains': () => 'trains',
  'unit-min-per-train': () => 'min/train',
  'unit-min-from-handback': () => 'min from handback',
  'unit-money-per': ({ currency, minutes }: At & { readonly currency: string }) =>
    `${currency} per ${minutes} min`,
};
