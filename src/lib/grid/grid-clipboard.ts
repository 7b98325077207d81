/** Copy, cut and paste are the browser's own events; the field has them to itself while a cell is under edit. */
import { cellsToText } from './clipboard.ts';
import { tableInHtml } from './table-in-html.ts';
import type { GridParts } from './grid-parts.ts';

export class GridClipboard {
  readonly #session: GridParts['session'];
  readonly #focus: GridParts['focus'];

  constructor({ session, focus }: Pick<GridParts, 'session' | 'focus'>) {
    this.#session = session;
    this.#focus = focus;
  }

  copy(event: ClipboardEvent): void {
    if (this.#isFree(event)) put(event, this.#session.copied());
  }

  cut(event: ClipboardEvent): void {
    if (!this.#isFree(event)) return;
    put(event, this.#session.cut());
    void this.#focus.take();
  }

  /** Also into a grid without rows, which has no field. */
  paste(event: ClipboardEvent): void {
    if (this.#session.edit !== null) return;
    this.#session.paste(pastedText(event.clipboardData));
    event.preventDefault();
    void this.#focus.take();
  }

  #isFree({ target }: ClipboardEvent): boolean {
    return this.#session.edit === null && target === this.#focus.field;
  }
}

/** As text; what comes as a table of a page alone, as from a mail, in the form that text has. */
function pastedText(data: DataTransfer | null): string {
  const text = data?.getData('text/plain') ?? '';
  if (text.includes('\t')) return text;
  const cells = tableInHtml(data?.getData('text/html') ?? '');
  return cells === null ? text : cellsToText(cells);
}

function put(event: ClipboardEvent, text: string): void {
  event.clipboardData?.setData('text/plain', text);
  event.preventDefault();
}
