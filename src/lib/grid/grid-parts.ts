import { GridFocus } from './grid-focus.svelte.ts';
import type { GridProps } from './grid-props.ts';
import { GridSession } from './grid-session.svelte.ts';
import { GridSieve } from './grid-sieve.svelte.ts';
import { GridView } from './grid-view.svelte.ts';
import { GridWidths } from './grid-widths.svelte.ts';

/** What commands, keys, pointer and clipboard act on. */
export interface GridParts {
  readonly sieve: GridSieve;
  /** What is looked at of what the grid is given. */
  readonly given: GridProps;
  readonly session: GridSession;
  readonly widths: GridWidths;
  readonly view: GridView;
  readonly focus: GridFocus;
}

export function gridParts(whole: GridProps): GridParts {
  const sieve = new GridSieve(whole);
  const { given } = sieve;
  const session = new GridSession(sieve);
  const widths = new GridWidths(given, whole);
  const view = new GridView(given, session.cursor);
  const focus = new GridFocus(session, view);
  return { sieve, given, session, widths, view, focus };
}
