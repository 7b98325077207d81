/** What a key means in the grid, as data: the grid obeys it, the help lists it, the tests walk it. */
import type { Move } from './moves.ts';
import type { SortWay } from './row-order.ts';

export type KeyPress = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

export type RowCommand =
  'insert-above' | 'insert-below' | 'duplicate' | 'delete-rows' | 'move-up' | 'move-down';

export type Command =
  | { readonly kind: 'move'; readonly move: Move; readonly stretch: boolean }
  | { readonly kind: 'tab' | 'enter'; readonly back: boolean }
  | { readonly kind: 'row'; readonly row: RowCommand }
  | { readonly kind: 'resize'; readonly byCh: number }
  /** `turn`: upwards, or downwards where the rows are in that order already. */
  | { readonly kind: 'sort'; readonly way: SortWay | 'turn' }
  | {
      readonly kind:
        | 'edit'
        | 'list'
        | 'clear'
        | 'erase'
        | 'undo'
        | 'redo'
        | 'select-all'
        | 'select-rows'
        | 'select-columns'
        | 'collapse'
        | 'fill-down'
        | 'fill-right'
        | 'toggle'
        | 'open'
        | 'ask'
        | 'range'
        | 'copy'
        | 'copy-with-headings'
        | 'cut'
        | 'paste'
        | 'find'
        | 'replace'
        | 'filter'
        | 'like-this'
        | 'hide-columns'
        | 'show-all'
        | 'fit-column'
        | 'reset-column'
        | 'menu';
    };

const arrows: Readonly<Record<string, 'up' | 'down' | 'left' | 'right'>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right'
};

/**
 * The command of a key while the cursor moves about (no cell is under edit), or null where the key is the cell's: a
 * character, or the browser's own. Ctrl and Cmd mean the same. Ctrl with Alt is a way to type characters, never a command.
 */
export function commandFor(press: KeyPress): Command | null {
  const { key, code, altKey: alt, shiftKey: shift } = press;
  const ctrl = press.ctrlKey || press.metaKey;
  if (ctrl && alt) return null;
  if (alt) return shift ? altShift(key, code) : altAlone(key);

  const arrow = arrows[key];
  if (arrow !== undefined) return { kind: 'move', move: ctrl ? `edge-${arrow}` : arrow, stretch: shift };
  switch (key) {
    case 'Home':
      return { kind: 'move', move: ctrl ? 'grid-start' : 'row-start', stretch: shift };
    case 'End':
      return { kind: 'move', move: ctrl ? 'grid-end' : 'row-end', stretch: shift };
    case 'PageUp':
    case 'PageDown':
      // With Ctrl the browser changes tabs.
      return ctrl ? null : { kind: 'move', move: key === 'PageUp' ? 'page-up' : 'page-down', stretch: shift };
    case 'Tab':
      return ctrl ? null : { kind: 'tab', back: shift };
    case 'Enter':
      return ctrl ? { kind: 'open' } : { kind: 'enter', back: shift };
    case ' ':
      if (ctrl) return { kind: 'select-columns' };
      return { kind: shift ? 'select-rows' : 'toggle' };
    case 'F2':
      return { kind: 'edit' };
    case 'F8':
      return { kind: 'ask' };
    case 'F10':
      return shift ? { kind: 'menu' } : null;
    case 'ContextMenu':
      return { kind: 'menu' };
    case 'Delete':
      return ctrl || shift ? null : { kind: 'clear' };
    case 'Backspace':
      return ctrl || shift ? null : { kind: 'erase' };
    case 'Escape':
      return { kind: 'collapse' };
  }
  return ctrl ? withCtrl(key.toLowerCase(), shift) : null;
}

function withCtrl(letter: string, shift: boolean): Command | null {
  if (letter === 'z') return { kind: shift ? 'redo' : 'undo' };
  if (shift) return null;
  switch (letter) {
    case 'y':
      return { kind: 'redo' };
    case 'a':
      return { kind: 'select-all' };
    case 'd':
      return { kind: 'fill-down' };
    case 'r':
      return { kind: 'fill-right' };
    case 'f':
      return { kind: 'find' };
    case 'h':
      return { kind: 'replace' };
    default:
      return null;
  }
}

function altAlone(key: string): Command | null {
  if (key === 'ArrowDown') return { kind: 'list' };
  if (key === 'Enter') return { kind: 'row', row: 'insert-below' };
  return null;
}

function altShift(key: string, code: string): Command | null {
  // By its place on the keyboard: with Alt some systems turn the letter into another character.
  switch (code) {
    case 'KeyD':
      return { kind: 'row', row: 'duplicate' };
    case 'KeyR':
      return { kind: 'range' };
    case 'KeyS':
      return { kind: 'sort', way: 'turn' };
    case 'KeyF':
      return { kind: 'filter' };
    case 'KeyL':
      return { kind: 'like-this' };
    case 'KeyH':
      return { kind: 'hide-columns' };
    case 'KeyC':
      return { kind: 'copy-with-headings' };
    case 'KeyA':
      return { kind: 'show-all' };
  }
  switch (key) {
    case 'Enter':
      return { kind: 'row', row: 'insert-above' };
    case 'Delete':
    case 'Backspace':
      return { kind: 'row', row: 'delete-rows' };
    case 'ArrowUp':
      return { kind: 'row', row: 'move-up' };
    case 'ArrowDown':
      return { kind: 'row', row: 'move-down' };
    case 'ArrowLeft':
      return { kind: 'resize', byCh: -1 };
    case 'ArrowRight':
      return { kind: 'resize', byCh: 1 };
    default:
      return null;
  }
}

/** How a key ends or steers an edit; null: the key is the text's own. */
export type EditCommand =
  | { readonly kind: 'cancel' }
  | { readonly kind: 'commit'; readonly then: Command }
  | { readonly kind: 'commit-block' }
  | { readonly kind: 'option'; readonly by: number };

/**
 * The command of a key while a cell is under edit. After typing over a cell the arrows go on to the next cell; after F2,
 * Enter or a second click they move within the text. While a list is open, up and down choose in it.
 */
export function editCommandFor(
  press: KeyPress,
  { typedOver, listOpen }: { readonly typedOver: boolean; readonly listOpen: boolean }
): EditCommand | null {
  const { key, altKey: alt } = press;
  const ctrl = press.ctrlKey || press.metaKey;
  if (key === 'Escape') return { kind: 'cancel' };
  if (key === 'Enter' && ctrl) return { kind: 'commit-block' };
  if ((key === 'Enter' || key === 'Tab') && !ctrl && !alt) {
    return { kind: 'commit', then: { kind: key === 'Enter' ? 'enter' : 'tab', back: press.shiftKey } };
  }
  if (listOpen) {
    if (key === 'ArrowUp' || key === 'ArrowDown') return { kind: 'option', by: key === 'ArrowUp' ? -1 : 1 };
    if (key === 'PageUp' || key === 'PageDown') return { kind: 'option', by: key === 'PageUp' ? -8 : 8 };
  }
  if (!typedOver || ctrl || alt || press.shiftKey) return null;
  const move = arrows[key] ?? (key === 'PageUp' ? 'page-up' : key === 'PageDown' ? 'page-down' : undefined);
  return move === undefined ? null : { kind: 'commit', then: { kind: 'move', move, stretch: false } };
}
