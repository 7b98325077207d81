// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { tableInHtml } from '#lib/grid/table-in-html.ts';

test('the cells of the first table, with room for those that reach over several columns', () => {
  expect(
    tableInHtml(
      '<html><body><!--StartFragment--><table><colgroup><col></colgroup><tr><th>Procedure</th><th colspan="2">Cases</th></tr>' +
        '<tr><td> Hip,\n redo </td><td>30</td><td>x</td></tr></table><!--EndFragment--></body></html>'
    )
  ).toEqual([
    ['Procedure', 'Cases', ''],
    ['Hip, redo', '30', 'x']
  ]);
});

test('nothing of it runs, and what is no table is none', () => {
  const html =
    '<table><tr><td><img src=x onerror="globalThis.ran = true">Hip<script>globalThis.ran = true</script></td></tr></table>';
  expect(tableInHtml(html)?.[0]?.[0]).toContain('Hip');
  expect('ran' in globalThis).toBe(false);
  expect(tableInHtml('<p>Hip</p>')).toBeNull();
  expect(tableInHtml('')).toBeNull();
});
