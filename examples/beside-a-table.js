// A page's own table feeds the elements beside it, and what is typed in the sheet goes back into it.
const table = document.querySelector('table');
const plan = document.querySelector('possession-document');
await customElements.whenDefined('possession-document');

const cells = (row) => [...row.cells].map((cell) => cell.textContent.trim());
const feed = () => plan.setRows('windows', [...table.rows].map(cells));

table.addEventListener('input', feed);
plan.addEventListener('possession-document-change', ({ document: { tables } }) => {
  const { columns, rows } = tables.windows;
  const shown = cells(table.rows[0]).map((heading) => columns.indexOf(heading));
  table.tBodies[0].replaceChildren(
    ...rows.map((row) => {
      const line = document.createElement('tr');
      for (const at of shown) line.insertCell().textContent = row[at] ?? '';
      return line;
    }),
  );
});
feed();
