import type { GridCell } from './grid-types.ts';

export interface CellMessage {
  /** The cell's state in words, and the sentence that came with it; empty where there is nothing to say. */
  readonly text: string;
  readonly tone: 'error' | 'note';
}

/** What is said of a cell that has the cursor: its state, where that is not the usual one, and its own sentence. */
export function cellMessage(cell: GridCell): CellMessage {
  const words = [stateInWords(cell), cell.message ?? ''].filter((part) => part !== '');
  return { text: words.join(' '), tone: cell.state === 'kept' ? 'error' : (cell.tone ?? 'note') };
}

function stateInWords({ state, path }: GridCell): string {
  switch (state) {
    case 'kept':
      return 'Not taken, kept as typed.';
    case 'default':
      return 'Default: nothing is given here.';
    case 'off':
      return 'Does not apply to this row.';
    case 'computed':
      // What has no working is a name from elsewhere: its column says from where.
      return path === undefined ? '' : 'Computed; F8 shows where it comes from.';
    case 'given':
      return '';
  }
}
