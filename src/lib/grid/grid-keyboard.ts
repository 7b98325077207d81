/** What a key does in the grid: a command while the cursor moves about, a turn of the edit while a cell is open. */
import type { Edit } from './cell-edit.ts';
import type { GridCommands } from './grid-commands.svelte.ts';
import type { GridParts } from './grid-parts.ts';
import { commandFor, editCommandFor } from './keys.ts';

export class GridKeyboard {
  readonly #parts: Pick<GridParts, 'session' | 'view' | 'focus'>;
  readonly #commands: GridCommands;

  constructor(parts: Pick<GridParts, 'session' | 'view' | 'focus'>, commands: GridCommands) {
    this.#parts = parts;
    this.#commands = commands;
  }

  down(event: KeyboardEvent): void {
    const { session, focus } = this.#parts;
    // An input method has this key; 229 is how some browsers say so at its end.
    if (event.isComposing || event.keyCode === 229) return;
    if (event.target !== focus.field) return;
    if (session.edit === null) this.#moving(event);
    else this.#editing(event, session.edit);
  }

  #moving(event: KeyboardEvent): void {
    const { session } = this.#parts;
    const command = commandFor(event);
    if (command !== null) {
      if (this.#commands.run(command)) event.preventDefault();
      return;
    }
    const character = event.key.length === 1 && !event.ctrlKey && !event.metaKey;
    // A field that takes no text would swallow the key in silence.
    if (character && !session.canEdit(session.cursor.active)) session.startEdit();
  }

  #editing(event: KeyboardEvent, edit: Edit): void {
    const { session, view, focus } = this.#parts;
    const command = editCommandFor(event, edit);
    if (command === null) return;
    if (command.kind === 'option') session.lightOption(command.by);
    else {
      if (command.kind === 'cancel') session.cancelEdit();
      else session.commitEdit({ overBlock: command.kind === 'commit-block' });
      if (command.kind === 'commit') {
        if (command.then.kind === 'enter') session.cursor.enter(command.then.back);
        else if (!session.obey(command.then, view.pageRows)) return;
      }
      void focus.take();
    }
    event.preventDefault();
    event.stopPropagation();
  }
}
