// What a person says of columns, as choices for the next reading.
import type { ImportChoices, ImportPreview } from '../../src/engine/types.js';

/** A column and the field it is read as; an empty text: it is kept and not read. */
export type Pick = readonly [at: number, field: string];

/** The preview as it will be once some columns are read as chosen: what is chosen next builds on it. */
export function previewWith(preview: ImportPreview, picks: readonly Pick[]): ImportPreview {
  const columns = picks.reduce(
    (all, [at, field]) =>
      all.map((item, index) => {
        if (index === at)
          return { ...item, field: field === '' ? null : field, unread: field === '' };
        return field !== '' && item.field === field ? { ...item, field: null } : item;
      }),
    [...preview.columns],
  );
  return { ...preview, columns };
}

/** The whole match as a preview shows it, said outright: what is chosen once stays however it was found. */
export function choicesOf({ columns, fields }: ImportPreview): ImportChoices {
  const map = Object.fromEntries(
    fields.map(({ field }) => [
      field,
      columns.find((column) => column.field === field)?.entry ?? '',
    ]),
  );
  return { map, unread: columns.filter((column) => column.unread).map((column) => column.entry) };
}

/** Choices by which columns are read as fields. */
export function withFields(preview: ImportPreview, picks: readonly Pick[]): ImportChoices {
  return choicesOf(previewWith(preview, picks));
}

/** Choices by which columns stay unread. */
export function withUnread(preview: ImportPreview, at: readonly number[]): ImportChoices {
  return withFields(
    preview,
    at.map((value) => [value, '']),
  );
}

/** The preview with the columns of choices that are on their way, so that the next choice does not lose them. */
export function previewChosen(
  preview: ImportPreview,
  { map, unread }: ImportChoices,
): ImportPreview {
  if (!map && !unread) return preview;
  const columns = preview.columns.map((column) => {
    const field = map
      ? (Object.entries(map).find(([, entry]) => entry === column.entry)?.[0] ?? null)
      : column.field;
    return { ...column, field, unread: unread?.includes(column.entry) ?? column.unread };
  });
  return { ...preview, columns };
}
