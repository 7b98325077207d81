/** How wide the columns are, in characters as the user sets them and in the page's own units. */
import { MediaQuery } from 'svelte/reactivity';
import type { GridProps } from './grid-props.ts';
import type { GridColumn } from './grid-types.ts';

type WidthsCh = Readonly<Record<string, number>>;

/** What stays in sight beside the row's header leaves room for little more. */
export const mostSticky = 3;

/**
 * On a narrow page the first column stays alone, on a few lines, and the row's header scrolls away: what else stayed would
 * leave no room for the other columns. The styles of the grid's parts say the same width.
 */
const narrow =
  typeof matchMedia === 'function' ? new MediaQuery('width <= 40rem') : { current: false as boolean };
const mostNarrowCh = 13;

export class GridWidths {
  readonly #given: GridProps;
  readonly #whole: Pick<GridProps, 'rows'>;
  /** Kept here where the caller does not keep them. */
  #ownCh = $state.raw<WidthsCh>({});

  /** @param whole with the rows that are hidden, whose numbers are wider */
  constructor(given: GridProps, whole: Pick<GridProps, 'rows'>) {
    this.#given = given;
    this.#whole = whole;
  }

  readonly #chosenCh = $derived.by((): WidthsCh => this.#given.widthsCh ?? this.#ownCh);

  /** The row's number, and its buttons. */
  readonly header = $derived.by((): string => {
    const { onopen, canGrow, canReorder } = this.#given;
    const buttons = (onopen === undefined ? 0 : 1) + (canGrow === true || canReorder === true ? 1 : 0);
    return `calc(${String(this.#whole.rows.length).length + 1}ch + ${0.75 + 1.625 * buttons}rem)`;
  });
  readonly columns = $derived.by((): readonly string[] =>
    this.#given.columns.map((column, at) => {
      const ch = this.inCh(column);
      return `calc(${at < this.sticky && narrow.current ? Math.min(ch, mostNarrowCh) : ch}ch + 1.125rem)`;
    })
  );
  readonly table = $derived.by((): string => sum([this.header, ...this.columns]));
  /** How many columns stay in sight. */
  readonly sticky = $derived.by((): number =>
    Math.min(this.#given.stickyColumns ?? 1, this.#given.columns.length, narrow.current ? 1 : mostSticky)
  );
  /** How far from the left each sticky column stays, and what lies beyond the last of them. */
  readonly stickyLefts = $derived.by((): readonly string[] =>
    Array.from({ length: mostSticky + 1 }, (_, at) =>
      sum([narrow.current ? '0px' : this.header, ...this.columns.slice(0, Math.min(at, this.sticky))])
    )
  );

  inCh({ key, widthCh }: GridColumn): number {
    // A key may be an id of the user’s, such as `constructor`.
    return Object.hasOwn(this.#chosenCh, key) ? (this.#chosenCh[key] ?? widthCh) : widthCh;
  }

  set({ key }: Pick<GridColumn, 'key'>, wantedCh: number): void {
    this.#keep({ ...this.#chosenCh, [key]: Math.max(4, Math.min(80, Math.round(wantedCh))) });
  }

  reset({ key }: GridColumn): void {
    const { [key]: _, ...others } = this.#chosenCh;
    this.#keep(others);
  }

  /** As wide as its longest text; long ones stay within reason. */
  fit(column: GridColumn): void {
    const { columns, rows } = this.#given;
    const at = columns.indexOf(column);
    const longest = rows.reduce(
      (most, row) => Math.max(most, row.cells[at]?.text.length ?? 0),
      column.title.length
    );
    this.set(column, Math.min(60, longest + 1));
  }

  #keep(widthsCh: WidthsCh): void {
    this.#ownCh = widthsCh;
    this.#given.onwidths?.(widthsCh);
  }
}

const sum = (lengths: readonly string[]): string => `calc(${lengths.join(' + ')})`;
