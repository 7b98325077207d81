/**
 * Copy, cut and paste are the browser's own events; the field has them to itself while a cell is under edit. From the menu
 * they need the browser's leave, and where it is refused the keys are named that need none.
 */
import { cellsToText } from './clipboard.ts';
import { isMac, keysShown } from './shortcuts.ts';
import { tableInHtml } from './table-in-html.ts';
import type { GridParts } from './grid-parts.ts';

export class GridClipboard {
  readonly #session: GridParts['session'];
  readonly #focus: GridParts['focus'];
  /** The next copy by the keys is to take the headings along, as the browser let them not be copied at once. */
  #headingsWaiting = false;

  constructor({ session, focus }: Pick<GridParts, 'session' | 'focus'>) {
    this.#session = session;
    this.#focus = focus;
  }

  copy(event: ClipboardEvent): void {
    if (!this.#isFree(event)) return;
    put(event, this.#session.copied(this.#headingsWaiting));
    this.#headingsWaiting = false;
  }

  /** Copy and cut without the keys. What is cut is cleared once it is on the clipboard, and not before. */
  async write(what: 'copy' | 'copy-with-headings' | 'cut'): Promise<void> {
    const session = this.#session;
    const headings = what === 'copy-with-headings';
    const { block } = session.cursor;
    const text = session.copied(headings);
    try {
      await clipboard().writeText(text);
      this.#headingsWaiting = false;
      if (what === 'cut') session.clearCut(block);
    } catch {
      this.#headingsWaiting = headings;
      const keys = what === 'cut' ? 'Ctrl+X' : 'Ctrl+C';
      session.refuse(
        `The browser did not let this page write to the clipboard: press ${keysShown(keys, isMac())}${headings ? ', and the headings come along' : ''}.`
      );
    }
    await this.#focus.take();
  }

  /** Paste without the keys. */
  async read(): Promise<void> {
    try {
      const text = await clipboard().readText();
      this.#session.remark = '';
      this.#session.paste(text);
    } catch {
      this.#session.refuse(
        `The browser did not let this page read the clipboard: press ${keysShown('Ctrl+V', isMac())}.`
      );
    }
    await this.#focus.take();
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

/** Pages without encryption have none. */
function clipboard(): Pick<Clipboard, 'readText' | 'writeText'> {
  const { clipboard: given } = navigator as Partial<Pick<Navigator, 'clipboard'>>;
  if (given === undefined) throw new Error('This page has no clipboard.');
  return given;
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
