/** Name of the sample plan. */
export const sampleName = 'Marl Vale renewals, 2027';
