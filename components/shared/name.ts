/** Characters of a title that are drawn. */
const MOST = 200;

/** A title as it is drawn: a browser takes minutes over one of millions of characters. The table has it whole. */
export const titleText = (title: string): string =>
  title.length <= MOST ? title : `${title.slice(0, MOST)}…`;

/** What something is called: its id and its title. */
export const nameText = ({ id, title }: { readonly id: string; readonly title: string }): string =>
  `${id} ${titleText(title)}`;
