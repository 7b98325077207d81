import { describe, expect, it } from 'vitest';
import { commandFor, editCommandFor, type KeyPress } from '#lib/grid/keys.ts';
import { keysShown, shortcuts } from '#lib/grid/shortcuts.ts';

function press(keys: string): KeyPress {
  const parts = keys.split('+');
  const key = parts.at(-1) ?? '';
  const down = (name: string) => parts.slice(0, -1).includes(name);
  const shift = down('Shift');
  return {
    key: key === 'Space' ? ' ' : key.length === 1 && !shift ? key.toLowerCase() : key,
    code: key.length === 1 ? `Key${key}` : key,
    ctrlKey: down('Ctrl'),
    metaKey: false,
    altKey: down('Alt'),
    shiftKey: shift
  };
}
const told = shortcuts.flatMap(({ list }) => list.flatMap(({ keys }) => keys));

describe('the keys that people are told of', () => {
  it.each(told.filter((keys) => !/^Ctrl\+[CXV]$/.test(keys)))('%s does something', (keys) => {
    const whileEditing = editCommandFor(press(keys), { typedOver: false, listOpen: false });
    expect(commandFor(press(keys)) ?? whileEditing).not.toBeNull();
  });

  it('each of them once', () => {
    expect(new Set(told).size).toBe(told.length);
  });

  it('are shown as they stand on the keyboard', () => {
    expect(keysShown('Alt+Shift+ArrowUp', false)).toBe('Alt+Shift+↑');
    expect(keysShown('Alt+Shift+ArrowUp', true)).toBe('⌥⇧↑');
    expect(keysShown('Ctrl+D', true)).toBe('⌘D');
    // With Cmd the system would hide the browser.
    expect(keysShown('Ctrl+H', true)).toBe('⌃H');
    expect(keysShown('Ctrl+H', false)).toBe('Ctrl+H');
    expect(keysShown('F8', true)).toBe('F8');
  });
});
