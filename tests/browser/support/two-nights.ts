import { tableOf } from '../../helpers/documents.js';

/** Two confirmed nights on end, of six hours each. */
export const twoNights = tableOf(
  'windows.csv',
  `window,title,start,end,status
W1,First night,2027-03-02 23:00,2027-03-03 05:00,confirmed
W2,Second night,2027-03-03 23:00,2027-03-04 05:00,confirmed`,
);
