/** Brings what is chosen of the places and of the ways to look at them into sight in rows that scroll where they are long. */
export function bringChosen(root: ParentNode): void {
  const chosen = root.querySelectorAll<HTMLElement>(
    '[role=tablist] [aria-selected=true], :is(.ways:not([hidden]), .choice) > [aria-pressed=true]',
  );
  for (const element of chosen) {
    const row = element.parentElement!;
    const [inner, outer] = [element.getBoundingClientRect(), row.getBoundingClientRect()];
    if (inner.left < outer.left) row.scrollLeft -= outer.left - inner.left;
    else if (inner.right > outer.right) row.scrollLeft += inner.right - outer.right;
  }
}
