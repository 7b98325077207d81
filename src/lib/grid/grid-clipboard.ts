/** Copy, cut and paste are the browser's own events; the field has them to itself while a cell is under edit. */
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
    this.#session.paste(event.clipboardData?.getData('text/plain') ?? '');
    event.preventDefault();
    void this.#focus.take();
  }

  #isFree({ target }: ClipboardEvent): boolean {
    return this.#session.edit === null && target === this.#focus.field;
  }
}

function put(event: ClipboardEvent, text: string): void {
  event.clipboardData?.setData('text/plain', text);
  event.preventDefault();
}
