/** Every word the element says of its own. */
export const defaultStrings = {
  caution: 'Cautions',
  print: 'Print',
  csv: 'CSV',
  workbook: 'Workbook',
  back: 'Back',
  actions: 'What to do with the report',
};

export type ReportStrings = Readonly<typeof defaultStrings>;
