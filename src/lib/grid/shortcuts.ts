/** The grid's keys as people are told of them. Ctrl stands for Cmd on a Mac. */
export interface Shortcut {
  /** One way to do it, or several. */
  readonly keys: readonly string[];
  readonly does: string;
}

export const shortcuts: readonly { readonly title: string; readonly list: readonly Shortcut[] }[] = [
  {
    title: 'Move and select',
    list: [
      { keys: ['Tab', 'Shift+Tab'], does: 'Next cell, cell before; out of the grid after the last' },
      { keys: ['Home', 'End', 'Ctrl+Home', 'Ctrl+End'], does: 'First and last cell of the row, of the grid' },
      { keys: ['PageUp', 'PageDown'], does: 'A screen up or down' },
      { keys: ['Ctrl+ArrowDown'], does: 'To the edge of what is filled, with any arrow' },
      { keys: ['Shift+ArrowDown'], does: 'Stretch the selection, with any arrow' },
      { keys: ['Ctrl+F'], does: 'Find in a long grid; once more for the browser’s own search' },
      { keys: ['Shift+Space', 'Ctrl+Space', 'Ctrl+A'], does: 'Select rows, columns, everything' }
    ]
  },
  {
    title: 'Edit',
    list: [
      { keys: ['Enter', 'F2'], does: 'Edit the cell; or just type over it' },
      { keys: ['Escape'], does: 'Give the edit up' },
      { keys: ['Delete'], does: 'Clear' },
      { keys: ['Space'], does: 'Turn yes and no over; open a list' },
      { keys: ['Alt+ArrowDown'], does: 'Open a list' },
      { keys: ['Ctrl+C', 'Ctrl+X', 'Ctrl+V'], does: 'Copy, cut, paste' },
      { keys: ['Alt+Shift+C'], does: 'Copy with the headings of the columns' },
      { keys: ['Ctrl+D', 'Ctrl+R'], does: 'Fill down, fill right' },
      { keys: ['Ctrl+H'], does: 'Replace a text in the cells' },
      { keys: ['Ctrl+Z', 'Ctrl+Y'], does: 'Undo, redo' }
    ]
  },
  {
    title: 'Rows and columns',
    list: [
      { keys: ['Alt+Enter', 'Alt+Shift+Enter'], does: 'Insert a row below, above' },
      { keys: ['Alt+Shift+D'], does: 'Duplicate the rows' },
      { keys: ['Alt+Shift+Delete'], does: 'Delete the rows' },
      { keys: ['Alt+Shift+ArrowUp', 'Alt+Shift+ArrowDown'], does: 'Move the rows' },
      { keys: ['Alt+Shift+ArrowLeft', 'Alt+Shift+ArrowRight'], does: 'Column narrower, wider' },
      { keys: ['Alt+Shift+S'], does: 'Sort by this column; once more turns the order round' },
      { keys: ['Alt+Shift+F', 'Alt+Shift+L'], does: 'Filter the rows; only rows like this cell' },
      { keys: ['Alt+Shift+H'], does: 'Hide the columns' },
      { keys: ['Alt+Shift+A'], does: 'Show all rows and columns again' }
    ]
  },
  {
    title: 'Ask',
    list: [
      { keys: ['F8'], does: 'Where does this figure come from?' },
      { keys: ['Alt+Shift+R'], does: 'Give the cell a range, low to high' },
      { keys: ['Ctrl+Enter'], does: 'Open the row; while typing: write into every selected cell' },
      { keys: ['Shift+F10'], does: 'Menu of the cell and its row' }
    ]
  }
];

const symbols: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→'
};
const onMac: Readonly<Record<string, string>> = { Ctrl: '⌘', Alt: '⌥', Shift: '⇧' };

export const isMac = (): boolean =>
  typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.userAgent);

/** Keys that the system takes for itself where Ctrl becomes Cmd: there Ctrl itself does it. */
const ownOnMac: Readonly<Record<string, string>> = { 'Ctrl+H': '⌃H' };

/** `Alt+Shift+ArrowUp` as it is printed on the keys before the reader: `Alt+Shift+↑`, on a Mac `⌥⇧↑`. */
export function keysShown(keys: string, isMac: boolean): string {
  const own = isMac ? ownOnMac[keys] : undefined;
  if (own !== undefined) return own;
  const parts = keys.split('+').map((part) => symbols[part] ?? (isMac ? (onMac[part] ?? part) : part));
  return parts.join(isMac ? '' : '+');
}
