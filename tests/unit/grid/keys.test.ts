import { describe, expect, it } from 'vitest';
import { commandFor, editCommandFor, type KeyPress } from '#lib/grid/keys.ts';

/** `Ctrl+Shift+ArrowUp` as the browser tells it. */
function press(keys: string): KeyPress {
  const parts = keys === '+' ? ['+'] : keys.split('+');
  const key = parts.at(-1) ?? '';
  const down = (name: string) => parts.slice(0, -1).includes(name);
  return {
    key: key === 'Space' ? ' ' : key,
    code: /^[a-z]$/i.test(key) ? `Key${key.toUpperCase()}` : key,
    ctrlKey: down('Ctrl'),
    metaKey: down('Cmd'),
    altKey: down('Alt'),
    shiftKey: down('Shift')
  };
}

describe('keys while the cursor moves about', () => {
  it.each([
    ['ArrowUp', { kind: 'move', move: 'up', stretch: false }],
    ['Shift+ArrowRight', { kind: 'move', move: 'right', stretch: true }],
    ['Ctrl+ArrowDown', { kind: 'move', move: 'edge-down', stretch: false }],
    ['Cmd+Shift+ArrowLeft', { kind: 'move', move: 'edge-left', stretch: true }],
    ['Home', { kind: 'move', move: 'row-start', stretch: false }],
    ['Ctrl+End', { kind: 'move', move: 'grid-end', stretch: false }],
    ['Shift+PageDown', { kind: 'move', move: 'page-down', stretch: true }],
    ['Tab', { kind: 'tab', back: false }],
    ['Shift+Tab', { kind: 'tab', back: true }],
    ['Enter', { kind: 'enter', back: false }],
    ['Shift+Enter', { kind: 'enter', back: true }],
    ['Ctrl+Enter', { kind: 'open' }],
    ['F2', { kind: 'edit' }],
    ['F8', { kind: 'ask' }],
    ['Shift+F10', { kind: 'menu' }],
    ['ContextMenu', { kind: 'menu' }],
    ['Delete', { kind: 'clear' }],
    ['Backspace', { kind: 'erase' }],
    ['Escape', { kind: 'collapse' }],
    ['Space', { kind: 'toggle' }],
    ['Shift+Space', { kind: 'select-rows' }],
    ['Ctrl+Space', { kind: 'select-columns' }],
    ['Ctrl+a', { kind: 'select-all' }],
    ['Ctrl+d', { kind: 'fill-down' }],
    ['Ctrl+r', { kind: 'fill-right' }],
    ['Ctrl+h', { kind: 'replace' }],
    ['Ctrl+z', { kind: 'undo' }],
    ['Ctrl+y', { kind: 'redo' }],
    ['Cmd+Shift+Z', { kind: 'redo' }],
    ['Alt+ArrowDown', { kind: 'list' }],
    ['Alt+Enter', { kind: 'row', row: 'insert-below' }],
    ['Alt+Shift+Enter', { kind: 'row', row: 'insert-above' }],
    ['Alt+Shift+D', { kind: 'row', row: 'duplicate' }],
    ['Alt+Shift+Delete', { kind: 'row', row: 'delete-rows' }],
    ['Alt+Shift+Backspace', { kind: 'row', row: 'delete-rows' }],
    ['Alt+Shift+ArrowUp', { kind: 'row', row: 'move-up' }],
    ['Alt+Shift+ArrowDown', { kind: 'row', row: 'move-down' }],
    ['Alt+Shift+ArrowRight', { kind: 'resize', byCh: 1 }],
    ['Alt+Shift+S', { kind: 'sort', way: 'turn' }],
    ['Alt+Shift+F', { kind: 'filter' }],
    ['Alt+Shift+C', { kind: 'copy-with-headings' }],
    ['Alt+Shift+L', { kind: 'like-this' }],
    ['Alt+Shift+H', { kind: 'hide-columns' }],
    ['Alt+Shift+A', { kind: 'show-all' }]
  ])('%s', (keys, command) => {
    expect(commandFor(press(keys))).toEqual(command);
  });

  it.each([
    '7',
    'a',
    'é',
    '+',
    'Ctrl+c',
    'Ctrl+v',
    'Ctrl+x',
    'Ctrl+t',
    'Ctrl+w',
    'Ctrl+Shift+R',
    'Ctrl+PageDown',
    'Ctrl+Tab',
    'F5',
    'F10',
    'Alt+ArrowLeft',
    'Ctrl+Alt+e',
    'Shift+Delete'
  ])('%s is the cell’s or the browser’s', (keys) => {
    expect(commandFor(press(keys))).toBeNull();
  });

  it('knows a letter by its place where Alt turns it into another character', () => {
    expect(commandFor({ ...press('Alt+Shift+D'), key: 'Î' })).toEqual({ kind: 'row', row: 'duplicate' });
  });
});

describe('keys while a cell is under edit', () => {
  const over = { typedOver: true, listOpen: false };
  const within = { typedOver: false, listOpen: false };
  const list = { typedOver: true, listOpen: true };

  it('Escape gives up, Enter and Tab go on', () => {
    expect(editCommandFor(press('Escape'), over)).toEqual({ kind: 'cancel' });
    expect(editCommandFor(press('Enter'), over)).toEqual({
      kind: 'commit',
      then: { kind: 'enter', back: false }
    });
    expect(editCommandFor(press('Shift+Tab'), within)).toEqual({
      kind: 'commit',
      then: { kind: 'tab', back: true }
    });
    expect(editCommandFor(press('Ctrl+Enter'), over)).toEqual({ kind: 'commit-block' });
  });

  it('arrows go on to the next cell after typing over, and stay in the text after F2', () => {
    expect(editCommandFor(press('ArrowLeft'), over)).toEqual({
      kind: 'commit',
      then: { kind: 'move', move: 'left', stretch: false }
    });
    expect(editCommandFor(press('ArrowLeft'), within)).toBeNull();
    expect(editCommandFor(press('Shift+ArrowLeft'), over)).toBeNull();
    expect(editCommandFor(press('Ctrl+z'), over)).toBeNull();
  });

  it('up and down choose while a list is open', () => {
    expect(editCommandFor(press('ArrowDown'), list)).toEqual({ kind: 'option', by: 1 });
    expect(editCommandFor(press('PageUp'), list)).toEqual({ kind: 'option', by: -8 });
    expect(editCommandFor(press('ArrowLeft'), list)).toMatchObject({ kind: 'commit' });
  });
});
