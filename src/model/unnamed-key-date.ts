/** What a price of key dates is called in the price book where nobody named it. */
export const unnamedKeyDate = 'Key date';
