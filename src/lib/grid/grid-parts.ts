import { GridFocus } from './grid-focus.svelte.ts';
import type { GridProps } from './grid-props.ts';
import { GridSession } from './grid-session.svelte.ts';
import { GridView } from './grid-view.svelte.ts';
import { GridWidths } from './grid-widths.svelte.ts';

/** What commands, keys, pointer and clipboard act on. */
export interface GridParts {
  readonly given: GridProps;
  readonly session: GridSession;
  readonly widths: GridWidths;
  readonly view: GridView;
  readonly focus: GridFocus;
}

export function gridParts(given: GridProps): GridParts {
  const session = new GridSession(given);
  const widths = new GridWidths(given);
  const view = new GridView(given, session.cursor);
  const focus = new GridFocus(session, view);
  return { given, session, widths, view, focus };
}
