/**
 * The cells of the first table in a piece of HTML, as browsers and spreadsheet programs put it on the clipboard; null
 * where there is none. Only texts are read: nothing of it becomes part of the page. A cell that reaches over several
 * columns is followed by empty ones, so that what stands after it stays in its column.
 */
export function tableInHtml(html: string): readonly (readonly string[])[] | null {
  if (!/<table\b/i.test(html)) return null;
  const table = new DOMParser().parseFromString(html, 'text/html').querySelector('table');
  if (table === null) return null;
  const rows = [...table.rows].map((row) =>
    [...row.cells].flatMap((cell) => [
      (cell.textContent ?? '').replace(/\s+/g, ' ').trim(),
      ...Array.from({ length: Math.min(cell.colSpan, 1000) - 1 }, () => '')
    ])
  );
  return rows.length === 0 ? null : rows;
}
