/**
 * Every word of the panel itself. What it tells comes from the explanation, which a host may word by itself.
 */
export const defaultStrings = {
  empty:
    'Pick any figure. This panel then says what it is made of, by which rule, and from which cells.',
  section: 'Where the figure comes from',
  rows: 'What it is made of',
  rule: 'By which rule',
  source: (source: string) => `Source: ${source}`,
  links: 'Back to what was typed',
};

export type WhyStrings = Readonly<typeof defaultStrings>;
