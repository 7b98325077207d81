// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/svelte';
import { tick } from 'svelte';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { GridAction, GridColumn } from '#lib/grid/grid-types.ts';
import TextSheet from './TextSheet.svelte';

const columns: GridColumn[] = [
  { key: 'name', title: 'Name', words: 'What it is called.', kind: 'text', widthCh: 20 },
  { key: 'minutes', title: 'Duration', unit: 'min', words: 'Mean time.', kind: 'number', widthCh: 8 },
  {
    key: 'agent',
    title: 'Agent',
    words: 'The agent.',
    kind: 'choice',
    widthCh: 12,
    options: [
      { id: 'sevoflurane', label: 'Sevoflurane' },
      { id: 'isoflurane', label: 'Isoflurane' },
      { id: 'desflurane', label: 'Desflurane' }
    ]
  },
  { key: 'relaxed', title: 'Relaxed', words: 'Whether a relaxant is given.', kind: 'flag', widthCh: 6 },
  { key: 'used', title: 'Used', unit: 'mL', words: 'What is used.', kind: 'computed', widthCh: 8 }
];

const four = [
  { name: 'One', minutes: '10', agent: 'sevoflurane', relaxed: 'no' },
  { name: 'Two', minutes: '20', agent: 'isoflurane', relaxed: 'no' },
  { name: 'Three', minutes: '', agent: '', relaxed: 'yes' },
  { name: 'Four', minutes: '40', agent: 'desflurane', relaxed: 'yes' }
];

function show(more: Partial<Parameters<typeof render<typeof TextSheet>>[1]> = {}) {
  const actions: GridAction[] = [];
  render(TextSheet, { texts: four, columns, actions, ...more });
  return actions;
}
afterEach(cleanup);

// The test's browser lays nothing out, so there are no sizes to observe.
function stubSizes() {
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe() {}
      unobserve() {}
      disconnect() {}
    }
  );
}
stubSizes();

const cell = (row: number, column: number): HTMLElement => {
  const found = document.querySelector<HTMLElement>(`tr[data-row="${row}"] [data-column="${column}"]`);
  if (found === null) throw new Error(`no cell ${row}, ${column}`);
  return found;
};
/** The text of a cell, without the mark of its list. */
const shownIn = (td: Element): string => (td.textContent ?? '').replace('▾', '').trim();
const text = (row: number, column: number) => shownIn(cell(row, column));
const texts = (column: number) => [...document.querySelectorAll(`td[data-column="${column}"]`)].map(shownIn);
const focused = (): string => {
  const td = document.activeElement?.closest('td');
  return td
    ? `${td.parentElement?.dataset['row']},${td.dataset['column']}`
    : (document.activeElement?.textContent ?? '');
};
const field = (): HTMLInputElement => {
  const active = document.activeElement;
  if (!(active instanceof HTMLInputElement)) throw new Error('the focus is in no cell');
  return active;
};
const said = () => screen.getByRole('status').textContent;
const settled = async () => {
  await tick();
  await tick();
};

async function click(row: number, column: number, how: MouseEventInit = {}) {
  const init = { button: 0, pointerType: 'mouse', ...how };
  await fireEvent.pointerDown(cell(row, column), init);
  await fireEvent.pointerUp(cell(row, column), init);
  await fireEvent.click(cell(row, column), init);
  await settled();
}
/** Returns whether the browser would still act on the key. */
async function key(keys: string): Promise<boolean> {
  const parts = keys.split('+');
  const name = parts.at(-1) ?? '';
  const down = (each: string) => parts.slice(0, -1).includes(each);
  const left = await fireEvent.keyDown(document.activeElement ?? document.body, {
    key: name === 'Space' ? ' ' : name,
    code: /^[a-z]$/i.test(name) ? `Key${name.toUpperCase()}` : name,
    ctrlKey: down('Ctrl'),
    altKey: down('Alt'),
    shiftKey: down('Shift')
  });
  await settled();
  return left;
}
/** As a browser does: the first character replaces what is selected. */
async function type(typed: string) {
  for (const character of typed) {
    if (!(await key(character)) || field().readOnly) continue;
    const { selectionStart, selectionEnd, value } = field();
    const start = selectionStart ?? value.length;
    await fireEvent.input(field(), {
      target: { value: value.slice(0, start) + character + value.slice(selectionEnd ?? start) }
    });
    await settled();
  }
}
async function clip(kind: 'copy' | 'cut' | 'paste', given = ''): Promise<string> {
  let carried = given;
  const event = new Event(kind, { bubbles: true, cancelable: true });
  Object.assign(event, {
    clipboardData: { getData: () => carried, setData: (_: string, value: string) => (carried = value) }
  });
  await fireEvent(document.activeElement ?? document.body, event);
  await settled();
  return carried;
}

describe('typing', () => {
  it('replaces the cell, Enter goes down, one action is told', async () => {
    const actions = show();
    await click(0, 1);
    await type('75');
    expect(field().value).toBe('75');
    await key('Enter');
    expect(actions).toEqual([
      { kind: 'write', by: 'typing', cells: [{ row: 0, column: 'minutes', text: '75' }] }
    ]);
    expect(text(0, 1)).toBe('75');
    expect(focused()).toBe('1,1');
  });

  it('F2 and Enter edit what is there, with the caret at its end', async () => {
    show();
    for (const opener of ['F2', 'Enter']) {
      await click(1, 1);
      await key(opener);
      expect(field().selectionStart).toBe(field().value.length);
      await type('5');
      await key('Enter');
    }
    expect(text(1, 1)).toBe('2055');
  });

  it('Escape restores, and tells nothing', async () => {
    const actions = show();
    await click(1, 0);
    await type('x');
    await key('Escape');
    expect(text(1, 0)).toBe('Two');
    expect(actions).toEqual([]);
    expect(focused()).toBe('1,0');
    await type('y');
    expect(field().value).toBe('y');
  });

  it('an edit that changes nothing tells nothing', async () => {
    const actions = show();
    await click(1, 0);
    await key('F2');
    await key('Enter');
    expect(focused()).toBe('2,0');
    await type('Three');
    await key('Tab');
    expect(actions).toEqual([]);
  });

  it('a click elsewhere, in the grid or out of it, ends the edit and keeps it', async () => {
    show();
    await click(0, 0);
    await type('A');
    await click(2, 0);
    expect(text(0, 0)).toBe('A');
    await type('B');
    screen.getByRole('button', { name: 'After' }).focus();
    await settled();
    expect(text(2, 0)).toBe('B');
  });

  it('Enter after a run of Tabs goes back to where the run began', async () => {
    show();
    await click(0, 0);
    await type('A');
    await key('Tab');
    await type('5');
    await key('Enter');
    expect(focused()).toBe('1,0');
  });

  it('is left to the input method while it composes', async () => {
    const actions = show();
    await click(0, 0);
    await fireEvent.compositionStart(field());
    await fireEvent.input(field(), { target: { value: 'に' } });
    await settled();
    await fireEvent.keyDown(field(), { key: 'Enter', isComposing: true });
    await fireEvent.keyDown(field(), { key: 'Enter', keyCode: 229 });
    expect(actions).toEqual([]);
    expect(field().value).toBe('に');
    await key('Enter');
    expect(text(0, 0)).toBe('に');
  });

  it('over a computed cell changes nothing and says so', async () => {
    const actions = show();
    await click(0, 4);
    await type('7');
    expect(actions).toEqual([]);
    expect(said()).toBe('Computed; it cannot be typed over.');
    expect(field().readOnly).toBe(true);
  });
});

describe('a text that cannot be read', () => {
  it('stays in its cell, marked, described and announced', async () => {
    show();
    await click(0, 1);
    await type('soon');
    await key('Enter');
    expect(text(0, 1)).toBe('soon');
    expect(cell(0, 1).getAttribute('aria-invalid')).toBe('true');
    expect(said()).toContain('Not taken, and kept as typed. “soon” is not a number.');
    await key('ArrowUp');
    expect(field().getAttribute('aria-invalid')).toBe('true');
    const message = document.getElementById(field().getAttribute('aria-describedby') ?? '');
    expect(message?.textContent).toContain('“soon” is not a number. Write a number in min');
    await key('F2');
    expect(field().value).toBe('soon');
  });

  it('is counted, and the next one is a click away', async () => {
    show();
    await click(1, 1);
    await clip('paste', 'a\nb');
    await click(0, 0);
    const next = screen.getByRole('button', { name: '2 cells not taken: show the next' });
    await fireEvent.click(next);
    await settled();
    expect(focused()).toBe('1,1');
    await fireEvent.click(next);
    await settled();
    expect(focused()).toBe('2,1');
    await fireEvent.click(next);
    await settled();
    expect(focused()).toBe('1,1');
  });
});

describe('Delete', () => {
  it('clears the block to its defaults in one action, and undo brings all of it back', async () => {
    const actions = show();
    await click(0, 0);
    await click(1, 1, { shiftKey: true });
    await key('Delete');
    expect(actions).toHaveLength(1);
    expect(text(0, 0)).toBe('');
    expect(text(0, 1)).toBe('60');
    expect(cell(0, 1).dataset['state']).toBe('default');
    expect(cell(0, 1).title).toContain('Default');
    await key('Ctrl+z');
    expect(texts(0)).toEqual(['One', 'Two', 'Three', 'Four']);
    await key('Ctrl+y');
    expect(text(1, 0)).toBe('');
  });

  it('leaves out what is empty already', async () => {
    const actions = show();
    await click(2, 1);
    await key('Delete');
    expect(actions).toEqual([]);
  });

  it('Backspace empties the cell and goes on typing', async () => {
    show();
    await click(0, 0);
    await key('Backspace');
    expect(field().value).toBe('');
    await type('Z');
    await key('Enter');
    expect(text(0, 0)).toBe('Z');
  });
});

describe('copy, cut and paste', () => {
  it('copies the block as tab-separated text, and pastes it elsewhere', async () => {
    show();
    await click(0, 0);
    await click(1, 2, { shiftKey: true });
    const copied = await clip('copy');
    expect(copied).toBe('One\t10\tSevoflurane\nTwo\t20\tIsoflurane');
    await click(2, 0);
    await clip('paste', copied);
    expect([text(2, 0), text(3, 1), text(3, 2)]).toEqual(['One', '20', 'Isoflurane']);
  });

  it('cuts', async () => {
    const actions = show();
    await click(0, 0);
    expect(await clip('cut')).toBe('One');
    expect(text(0, 0)).toBe('');
    expect(actions[0]).toMatchObject({ kind: 'write', by: 'cut' });
  });

  it('grows the grid, keeps what it cannot read, and reports both', async () => {
    const actions = show();
    await click(3, 0);
    await clip('paste', 'A\t1\tisoflurane\r\nB\t1h15\tnothing\r\n"C\tD"\tbad\tSevoflurane\r\n');
    expect(actions).toHaveLength(1);
    expect(texts(0)).toEqual(['One', 'Two', 'Three', 'A', 'B', 'C\tD']);
    expect([text(4, 1), text(5, 1), text(5, 2)]).toEqual(['75', 'bad', 'Sevoflurane']);
    expect(said()).toBe('9 cells pasted; 2 cells could not be read and kept as given');
    expect(cell(5, 2).getAttribute('aria-selected')).toBe('true');
  });

  it('reports what found no place, and what is computed', async () => {
    const actions = show({ canGrow: false });
    await click(3, 3);
    await clip('paste', 'yes\t5\t6\nno\t7\t8');
    expect(actions).toEqual([
      { kind: 'write', by: 'paste', cells: [{ row: 3, column: 'relaxed', text: 'yes' }] }
    ]);
    expect(said()).toBe('1 cell pasted; 5 cells found no place beyond the last row or column');
  });

  it('one value fills a block', async () => {
    show();
    await click(0, 1);
    await click(3, 1, { shiftKey: true });
    await clip('paste', '33');
    expect(texts(1)).toEqual(['33', '33', '33', '33']);
  });

  it('inside a cell under edit is the text field’s own', async () => {
    const actions = show();
    await click(0, 0);
    await key('F2');
    await clip('paste', 'A\tB');
    expect(actions).toEqual([]);
  });

  it('says what the caller says when it refuses', async () => {
    show({ refusal: 'At most 2,000 rows.' });
    await click(0, 0);
    await clip('paste', 'x');
    expect(said()).toBe('At most 2,000 rows.');
  });
});

describe('filling', () => {
  it('down and right, by key', async () => {
    show();
    await click(0, 1);
    await click(2, 1, { shiftKey: true });
    await key('Ctrl+d');
    expect(texts(1)).toEqual(['10', '10', '10', '40']);
    await click(3, 0);
    await key('Ctrl+d');
    expect(text(3, 0)).toBe('Three');
  });

  it('Ctrl+Enter writes what is typed over the whole block', async () => {
    const actions = show();
    await click(0, 1);
    await click(3, 1, { shiftKey: true });
    await type('9');
    await key('Ctrl+Enter');
    expect(texts(1)).toEqual(['9', '9', '9', '9']);
    expect(actions).toHaveLength(1);
  });
});

describe('choices', () => {
  it('open with Alt and the down arrow, choose by arrow and Enter', async () => {
    const actions = show();
    await click(0, 2);
    await key('Alt+ArrowDown');
    expect(screen.getAllByRole('option').map((each) => each.textContent?.trim())).toEqual([
      'Sevoflurane',
      'Isoflurane',
      'Desflurane'
    ]);
    expect(field().getAttribute('aria-expanded')).toBe('true');
    const lit = () =>
      document.getElementById(field().getAttribute('aria-activedescendant') ?? '')?.textContent?.trim();
    expect(lit()).toBe('Sevoflurane');
    await key('ArrowDown');
    expect(lit()).toBe('Isoflurane');
    await key('Enter');
    expect(actions).toEqual([
      { kind: 'write', by: 'typing', cells: [{ row: 0, column: 'agent', text: 'isoflurane' }] }
    ]);
    expect(screen.queryByRole('listbox')).toBeNull();
    expect(focused()).toBe('1,2');
  });

  it('typing filters, Tab takes the first that fits', async () => {
    show();
    await click(2, 2);
    await type('de');
    expect(screen.getAllByRole('option')).toHaveLength(1);
    await key('Tab');
    expect(text(2, 2)).toBe('Desflurane');
    expect(focused()).toBe('2,3');
  });

  it('a click takes an option; Escape takes none', async () => {
    const actions = show();
    await click(0, 2);
    await key('Enter');
    await key('ArrowDown');
    await key('Escape');
    expect(actions).toEqual([]);
    await key('Enter');
    await fireEvent.click(screen.getByRole('option', { name: 'Desflurane' }));
    await settled();
    expect(text(0, 2)).toBe('Desflurane');
    expect(focused()).toBe('0,2');
  });

  it('looking without choosing changes nothing', async () => {
    const actions = show();
    await click(0, 2);
    await key('Alt+ArrowDown');
    await key('Tab');
    expect(actions).toEqual([]);
  });

  it('a text that fits no option is kept', async () => {
    show();
    await click(0, 2);
    await type('zz');
    await key('Enter');
    expect(text(0, 2)).toBe('zz');
    expect(cell(0, 2).dataset['state']).toBe('kept');
  });

  it('Space turns a flag over', async () => {
    const actions = show();
    await click(0, 3);
    await key('Space');
    await key('Space');
    expect(actions.map((action) => (action.kind === 'write' ? action.cells[0]?.text : ''))).toEqual([
      'yes',
      'no'
    ]);
  });
});

describe('rows', () => {
  it('are inserted, duplicated, moved and deleted by keys; the cursor goes with them', async () => {
    const actions = show();
    await click(1, 0);
    await key('Alt+Enter');
    expect(texts(0)).toEqual(['One', 'Two', '', 'Three', 'Four']);
    expect(focused()).toBe('2,0');
    await key('Alt+Shift+Delete');
    await key('Alt+Shift+Enter');
    expect(actions.at(-1)).toEqual({ kind: 'insert-rows', at: 2, count: 1 });
    await key('Alt+Shift+Delete');
    await click(0, 0);
    await key('Alt+Shift+D');
    expect(texts(0)).toEqual(['One', 'One', 'Two', 'Three', 'Four']);
    expect(focused()).toBe('1,0');
    await key('Alt+Shift+ArrowDown');
    expect(texts(0)).toEqual(['One', 'Two', 'One', 'Three', 'Four']);
    expect(focused()).toBe('2,0');
    await key('Alt+Shift+ArrowUp');
    await key('Alt+Shift+Backspace');
    expect(texts(0)).toEqual(['One', 'Two', 'Three', 'Four']);
  });

  it('several at once', async () => {
    const actions = show();
    await click(1, 0);
    await click(2, 0, { shiftKey: true });
    await key('Shift+Space');
    await key('Alt+Shift+ArrowUp');
    expect(texts(0)).toEqual(['Two', 'Three', 'One', 'Four']);
    await key('Alt+Enter');
    expect(actions.at(-1)).toEqual({ kind: 'insert-rows', at: 2, count: 2 });
  });

  it('stay where they are at the edges, and where the grid does not grow or reorder', async () => {
    const actions = show({ canGrow: false, canReorder: false });
    await click(1, 0);
    for (const keys of ['Alt+Enter', 'Alt+Shift+D', 'Alt+Shift+Delete', 'Alt+Shift+ArrowUp']) await key(keys);
    expect(actions).toEqual([]);
    expect(screen.queryByRole('button', { name: 'Add a row' })).toBeNull();
  });

  it('have a menu with the same operations', async () => {
    show();
    await fireEvent.click(screen.getByRole('button', { name: 'Row actions: Two' }));
    await settled();
    const items = screen.getAllByRole('menuitem');
    expect(document.activeElement).toBe(items[0]);
    await fireEvent.keyDown(items[0] as HTMLElement, { key: 'd' });
    expect(document.activeElement?.textContent).toContain('Duplicate row');
    await fireEvent.click(document.activeElement as HTMLElement);
    await settled();
    expect(texts(0)).toEqual(['One', 'Two', 'Two', 'Three', 'Four']);
    expect(screen.queryByRole('menu')).toBeNull();
    expect(focused()).toBe('2,0');
  });

  it('the last one deleted leaves a grid that says how to begin', async () => {
    const actions = show({ texts: [{ name: 'Only' }] });
    await click(0, 0);
    await key('Alt+Shift+Delete');
    expect(screen.getByText(/Add the first row, or paste/)).toBeTruthy();
    await fireEvent.click(screen.getByRole('button', { name: 'Add the first row' }));
    await settled();
    expect(actions.at(-1)).toEqual({ kind: 'insert-rows', at: 0, count: 1 });
    expect(focused()).toBe('0,0');
  });
});

describe('asking and opening', () => {
  it('by key, by double click, by button', async () => {
    const onask = vi.fn();
    const onopen = vi.fn();
    show({ onask, onopen });
    await click(1, 4);
    await key('F8');
    await key('Enter');
    await fireEvent.dblClick(cell(1, 4));
    expect(onask.mock.calls).toEqual([['where.it.is'], ['where.it.is'], ['where.it.is']]);
    await key('Ctrl+Enter');
    await fireEvent.click(screen.getByRole('button', { name: 'Open: Three' }));
    expect(onopen.mock.calls).toEqual([['row-1'], ['row-2']]);
  });
});

describe('the focus', () => {
  it('has one stop in the grid, and Tab leaves after the last cell', async () => {
    show();
    expect(document.querySelectorAll('[role=grid] [tabindex="0"], [role=grid] input')).toHaveLength(1);
    await click(3, 4);
    expect(await key('Tab')).toBe(true);
    await click(0, 0);
    expect(await key('Shift+Tab')).toBe(true);
    expect(await key('Tab')).toBe(false);
    expect(focused()).toBe('0,1');
  });

  it('stays in the grid, on a cell, whatever happens to the rows', async () => {
    show();
    await click(3, 0);
    await key('Alt+Shift+Delete');
    expect(focused()).toBe('2,0');
    await key('Ctrl+z');
    expect(document.activeElement).toBeInstanceOf(HTMLInputElement);
  });
});

describe('what an assistive technology reads', () => {
  it('rows, columns, selection and read-only cells', async () => {
    show();
    const grid = screen.getByRole('grid', { name: 'Sheet' });
    expect(grid.getAttribute('aria-rowcount')).toBe('5');
    expect([...grid.querySelectorAll('tr')].map((row) => row.getAttribute('aria-rowindex'))).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5'
    ]);
    expect(cell(0, 4).getAttribute('aria-readonly')).toBe('true');
    await click(0, 0);
    await key('Shift+ArrowDown');
    await key('Shift+ArrowRight');
    expect(grid.querySelectorAll('[aria-selected=true]')).toHaveLength(4);
    expect(said()).toBe('2 rows by 2 columns selected');
    expect(screen.getByRole('textbox', { name: 'Name One' })).toBe(document.activeElement);
  });

  it('a long grid draws a part of its rows and counts all of them', async () => {
    show({ texts: Array.from({ length: 500 }, (_, index) => ({ name: `Row ${index}` })) });
    const drawn = () =>
      [...document.querySelectorAll('tbody tr[aria-rowindex]')].map((row) =>
        Number(row.getAttribute('aria-rowindex'))
      );
    expect(screen.getByRole('grid').getAttribute('aria-rowcount')).toBe('501');
    expect(drawn().length).toBeLessThan(60);
    await click(0, 0);
    await key('Ctrl+End');
    expect(drawn().at(-1)).toBe(501);
    expect(focused()).toBe('499,4');
    await type('x');
    expect(text(499, 0)).toBe('Row 499');
  });
});

it('a cell that is not in force is copied as typed, and named', async () => {
  show({ texts: [{ name: 'One', minutes: 'long' }, ...four.slice(1)] });
  await click(0, 0);
  await key('Shift+ArrowRight');
  expect(await clip('copy')).toBe('One\tlong');
  expect(screen.getByTestId('grid-remark').textContent).toBe(
    '1 cell copied as typed, though not in force: One, Duration.'
  );
  await click(1, 0);
  await clip('copy');
  expect(screen.queryByTestId('grid-remark')).toBeNull();
});

describe('what is looked at', () => {
  const shownNames = () => texts(0);
  const bar = () => screen.getByRole('group', { name: 'What is shown of Sheet' }).textContent;
  const ordinals = () => [...document.querySelectorAll('tbody .ordinal')].map((each) => each.textContent);

  it('can be the rows like a cell, with their own numbers and a line that says so', async () => {
    show();
    await click(1, 3);
    await key('Alt+Shift+l');
    expect(shownNames()).toEqual(['One', 'Two']);
    await click(0, 3);
    await key('Alt+Shift+a');
    await click(3, 3);
    await key('Alt+Shift+l');
    expect(shownNames()).toEqual(['Three', 'Four']);
    expect(ordinals()).toEqual(['3', '4']);
    expect(focused()).toBe('1,3');
    expect(bar()).toContain('2 of 4 rows shown; all count in the figures.');
    expect(screen.getByRole('grid').getAttribute('aria-rowcount')).toBe('5');
    expect(cell(1, 0).parentElement?.getAttribute('aria-rowindex')).toBe('5');
  });

  it('is all again in one step, with the cursor on its row', async () => {
    show();
    await click(2, 3);
    await key('Alt+Shift+l');
    await key('ArrowDown');
    await fireEvent.click(screen.getByRole('button', { name: 'Show all rows and columns' }));
    await settled();
    expect(shownNames()).toEqual(['One', 'Two', 'Three', 'Four']);
    expect(focused()).toBe('3,3');
    expect(screen.queryByText(/rows shown/)).toBeNull();
  });

  it('follows the conditions as they are typed', async () => {
    show();
    await click(0, 1);
    await key('Alt+Shift+f');
    await fireEvent.change(screen.getByLabelText('Rule of condition 1'), { target: { value: 'at-least' } });
    await fireEvent.input(screen.getByLabelText('Text of condition 1'), { target: { value: '20' } });
    await settled();
    expect(shownNames()).toEqual(['Two', 'Four']);
    await fireEvent.input(screen.getByLabelText('Text of condition 1'), { target: { value: 'x' } });
    await settled();
    expect(shownNames()).toHaveLength(4);
    expect(bar()).toContain('“x” is no number: this condition hides nothing.');
    await fireEvent.input(screen.getByLabelText('Text of condition 1'), { target: { value: '99' } });
    await settled();
    screen.getByText('No row fits the filter.');
  });

  const onlyTwoAndFour = async () => {
    await click(0, 0);
    await key('Alt+Shift+f');
    await fireEvent.change(screen.getByLabelText('Column of condition 1'), { target: { value: 'minutes' } });
    await fireEvent.change(screen.getByLabelText('Rule of condition 1'), { target: { value: 'at-least' } });
    await fireEvent.input(screen.getByLabelText('Text of condition 1'), { target: { value: '20' } });
    await settled();
  };

  it('is written in by the rows’ own numbers; a row that no longer fits stays in sight', async () => {
    const actions = show();
    await onlyTwoAndFour();
    await click(1, 1);
    await type('5');
    await key('Enter');
    expect(actions).toEqual([
      { kind: 'write', by: 'typing', cells: [{ row: 3, column: 'minutes', text: '5' }] }
    ]);
    expect(shownNames()).toEqual(['Two', 'Four']);
    await key('Ctrl+z');
    expect(text(1, 1)).toBe('40');
  });

  it('takes a pasted block row by row, passes hidden rows over and says so', async () => {
    const actions = show();
    await onlyTwoAndFour();
    await click(0, 0);
    await clip('paste', 'A\t1\nB\t2\nC\t3');
    expect(actions).toMatchObject([
      {
        kind: 'write',
        cells: [
          { row: 1, column: 'name', text: 'A' },
          { row: 1, column: 'minutes', text: '1' },
          { row: 3, column: 'name', text: 'B' },
          { row: 3, column: 'minutes', text: '2' },
          { row: 4, column: 'name', text: 'C' },
          { row: 4, column: 'minutes', text: '3' }
        ]
      }
    ]);
    expect(screen.getByTestId('grid-remark').textContent).toBe('1 hidden row passed over.');
    expect(shownNames()).toEqual(['A', 'B', 'C']);
    await key('Alt+Shift+a');
    expect(shownNames()).toEqual(['One', 'A', 'Three', 'B', 'C']);
  });

  it('fills, copies, moves, inserts, duplicates and deletes the rows in sight alone', async () => {
    const actions = show();
    await onlyTwoAndFour();
    await click(0, 1);
    await key('Shift+ArrowDown');
    expect(await clip('copy')).toBe('20\n40');
    expect(said()).toBe('2 cells copied; 1 hidden row left out');
    await key('Ctrl+d');
    await click(1, 0);
    await key('Alt+Shift+ArrowUp');
    expect(actions).toEqual([
      { kind: 'write', by: 'fill', cells: [{ row: 3, column: 'minutes', text: '20' }], own: true },
      { kind: 'move-rows', rows: [3], by: -2 }
    ]);
    expect(shownNames()).toEqual(['Four', 'Two']);
    actions.length = 0;
    await click(0, 0);
    await key('Alt+Shift+ArrowDown');
    expect(actions).toEqual([{ kind: 'move-rows', rows: [1], by: 1 }]);
    expect(shownNames()).toEqual(['Two', 'Four']);
    actions.length = 0;
    await click(1, 0);
    await key('Alt+Shift+Enter');
    await click(0, 0);
    await key('Shift+ArrowDown');
    await key('Shift+ArrowDown');
    await key('Shift+Space');
    await key('Alt+Shift+d');
    await key('Alt+Shift+Delete');
    expect(actions).toEqual([
      { kind: 'insert-rows', at: 2, count: 1 },
      { kind: 'duplicate-rows', rows: [1, 2, 3] },
      { kind: 'delete-rows', rows: [4, 5, 6] }
    ]);
    await key('Alt+Shift+a');
    expect(shownNames()).toEqual(['One', 'Two', '', 'Four', 'Three']);
  });

  it('brings a hidden cell that was not taken into sight', async () => {
    show({ texts: [...four, { name: 'Five', minutes: 'long', relaxed: 'no' }] });
    await onlyTwoAndFour();
    expect(shownNames()).toEqual(['Two', 'Four']);
    await fireEvent.click(screen.getByRole('button', { name: '1 cell not taken: show the next' }));
    await settled();
    expect(shownNames()).toEqual(['Two', 'Four', 'Five']);
    expect(focused()).toBe('2,1');
  });

  it('leaves hidden columns out; they keep their values and take nothing that is pasted', async () => {
    const actions = show();
    await click(0, 1);
    await key('Shift+ArrowRight');
    await key('Alt+Shift+h');
    expect([...document.querySelectorAll('thead .title')].map((each) => each.textContent)).toEqual([
      'Name',
      'Relaxed',
      'Used'
    ]);
    expect(bar()).toContain('2 columns not shown: Duration, Agent; they keep their values.');
    await click(0, 0);
    await clip('paste', 'New\tyes');
    expect(actions).toMatchObject([
      {
        cells: [
          { column: 'name', text: 'New' },
          { column: 'relaxed', text: 'yes' }
        ]
      }
    ]);
    expect(screen.getByTestId('grid-remark').textContent).toBe('2 hidden columns passed over.');
    await key('Alt+Shift+a');
    expect([text(0, 1), text(0, 2)]).toEqual(['10', 'Sevoflurane']);
  });

  it('is never without a column', async () => {
    show();
    await click(0, 0);
    await key('Ctrl+a');
    await key('Alt+Shift+h');
    expect(document.querySelectorAll('thead .title')).toHaveLength(5);
    expect(said()).toBe('The last column cannot be hidden.');
  });
});

describe('sorting', () => {
  it('is one action on all rows, hidden ones too; the cursor stays with its row and undo takes it back', async () => {
    const actions = show();
    await click(3, 0);
    await key('Alt+Shift+s');
    expect(actions).toEqual([{ kind: 'order-rows', order: [3, 0, 2, 1] }]);
    expect(texts(0)).toEqual(['Four', 'One', 'Three', 'Two']);
    expect(focused()).toBe('0,0');
    expect(said()).toBe('Sorted by Name, A to Z.');
    await key('Alt+Shift+s');
    expect(texts(0)).toEqual(['Two', 'Three', 'One', 'Four']);
    expect(focused()).toBe('3,0');
    await key('Ctrl+z');
    await key('Ctrl+z');
    expect(texts(0)).toEqual(['One', 'Two', 'Three', 'Four']);
  });

  it('is on the menu, and acts on nothing where the rows are in that order', async () => {
    const actions = show();
    await click(0, 1);
    await key('Shift+F10');
    await fireEvent.click(screen.getByRole('menuitem', { name: 'Sort by this column, largest first' }));
    await settled();
    expect(texts(1)).toEqual(['40', '20', '10', '60']);
    await key('Shift+F10');
    await fireEvent.click(screen.getByRole('menuitem', { name: 'Sort by this column, largest first' }));
    await settled();
    expect(actions).toHaveLength(1);
    expect(said()).toBe('The rows are in the order by Duration, largest first.');
  });
});

describe('replacing', () => {
  const found = () => screen.getByRole('search').querySelector('[role=status]')?.textContent;
  async function replacing(text: string, by: string) {
    await key('Ctrl+h');
    await fireEvent.input(screen.getByLabelText('Find in this grid'), { target: { value: text } });
    await fireEvent.input(screen.getByLabelText('Replace with'), { target: { value: by } });
    await settled();
  }
  const press = async (name: string) => {
    await fireEvent.click(screen.getByRole('button', { name }));
    await settled();
  };

  it('is one action for all cells; what cannot be read is kept and said, and undo takes all back', async () => {
    const actions = show();
    await click(0, 0);
    await replacing('0', 'x');
    expect(found()).toBe('1 of 4');
    await press('Replace all');
    expect(actions).toEqual([
      {
        kind: 'write',
        by: 'replace',
        cells: [
          { row: 0, column: 'minutes', text: '1x' },
          { row: 1, column: 'minutes', text: '2x' },
          { row: 3, column: 'minutes', text: '4x' }
        ]
      }
    ]);
    expect(found()).toBe(
      '3 cells replaced; 3 cells could not be read and kept as given; 1 cell left alone, computed or with no such text in what is typed.'
    );
    await fireEvent.keyDown(screen.getByLabelText('Replace with'), { key: 'Escape' });
    await settled();
    expect(screen.queryByRole('search')).toBeNull();
    await key('Ctrl+z');
    expect(texts(1)).toEqual(['10', '20', '60', '40']);
  });

  it('goes from one cell to the next', async () => {
    const actions = show();
    await click(0, 0);
    await replacing('o', '0');
    expect(found()).toBe('1 of 7');
    await press('Replace');
    expect(text(0, 0)).toBe('0ne');
    expect(actions).toHaveLength(1);
    expect(cell(0, 2).dataset['place']).toBe('active');
    await press('Previous');
    await press('Next');
    expect(actions).toHaveLength(1);
  });

  it('can be kept to what was selected, and to whole cells', async () => {
    const actions = show();
    await click(0, 3);
    await key('Shift+ArrowDown');
    await replacing('no', 'yes');
    expect(screen.getByLabelText<HTMLInputElement>('In the selection alone').checked).toBe(true);
    await press('Replace all');
    expect(actions).toMatchObject([
      {
        cells: [
          { row: 0, column: 'relaxed' },
          { row: 1, column: 'relaxed' }
        ]
      }
    ]);
    expect(actions).toHaveLength(1);
    await fireEvent.click(screen.getByLabelText('In the selection alone'));
    await fireEvent.click(screen.getByLabelText('Whole cells alone'));
    await fireEvent.input(screen.getByLabelText('Find in this grid'), { target: { value: '2' } });
    await settled();
    expect(found()).toBe('Not found');
  });

  it('leaves computed cells alone and says so', async () => {
    const actions = show();
    await click(0, 0);
    await replacing('42', '43');
    await press('Replace all');
    expect(actions).toEqual([]);
    expect(found()).toBe(
      'Nothing was replaced; 4 cells left alone, computed or with no such text in what is typed.'
    );
  });

  it('is for what is looked at; what is found elsewhere is counted', async () => {
    const actions = show();
    await click(0, 3);
    await key('Alt+Shift+l');
    await replacing('o', '0');
    expect(found()).toContain('more where nothing is shown');
    await press('Replace all');
    expect(actions[0]).toMatchObject({
      cells: expect.not.arrayContaining([{ row: 3, column: 'name', text: 'F0ur' }])
    });
  });
});

describe('copy, cut and paste from the menu', () => {
  /** A clipboard that gives leave, or refuses. */
  function withClipboard(text: string, refuses = false) {
    const held = { text };
    const refused = () => Promise.reject(new DOMException('No', 'NotAllowedError'));
    vi.stubGlobal('navigator', {
      ...navigator,
      userAgent: '',
      language: 'en-GB',
      clipboard: refuses
        ? { readText: refused, writeText: refused }
        : {
            readText: () => Promise.resolve(held.text),
            writeText: (written: string) => Promise.resolve(void (held.text = written))
          }
    });
    return held;
  }
  afterEach(() => {
    vi.unstubAllGlobals();
    stubSizes();
  });
  async function choose(name: string) {
    await key('Shift+F10');
    await fireEvent.click(screen.getByRole('menuitem', { name }));
    await settled();
    await settled();
  }
  const remark = () => screen.queryByTestId('grid-remark')?.textContent ?? '';

  it('do as the keys do', async () => {
    const held = withClipboard('');
    const actions = show();
    await click(0, 0);
    await key('Shift+ArrowRight');
    await choose('Copy');
    expect(held.text).toBe('One\t10');
    expect(actions).toEqual([]);
    await choose('Cut');
    expect(actions).toEqual([
      {
        kind: 'write',
        by: 'cut',
        cells: [
          { row: 0, column: 'name', text: '' },
          { row: 0, column: 'minutes', text: '' }
        ]
      }
    ]);
    await click(1, 0);
    await choose('Paste');
    expect([text(1, 0), text(1, 1)]).toEqual(['One', '10']);
    expect(remark()).toBe('');
  });

  it('take the headings along, with their units', async () => {
    const held = withClipboard('');
    show();
    await click(0, 0);
    await key('Shift+ArrowDown');
    await key('Shift+ArrowRight');
    await key('Alt+Shift+c');
    await settled();
    expect(held.text).toBe('Name\tDuration (min)\nOne\t10\nTwo\t20');
    expect(said()).toBe('4 cells copied with headings');
  });

  it('say which keys to press where the browser refuses; nothing is cleared, and the headings come with the next copy', async () => {
    withClipboard('', true);
    const actions = show();
    await click(0, 1);
    await choose('Cut');
    expect(remark()).toBe('The browser did not let this page write to the clipboard: press Ctrl+X.');
    await choose('Paste');
    expect(remark()).toBe('The browser did not let this page read the clipboard: press Ctrl+V.');
    expect(actions).toEqual([]);
    await choose('Copy with headings');
    expect(remark()).toBe(
      'The browser did not let this page write to the clipboard: press Ctrl+C, and the headings come along.'
    );
    expect(await clip('copy')).toBe('Duration (min)\n10');
    expect(remark()).toBe('');
    expect(await clip('copy')).toBe('10');
  });

  it('say so too where the page has no clipboard at all', async () => {
    show();
    await click(0, 0);
    await choose('Copy');
    expect(remark()).toContain('press Ctrl+C');
  });
});
