/** The widths of columns as the user set them, the same on every visit from this device. */
import { keepColumnWidths, keptColumnWidths, type ColumnWidths } from '#lib/storage/kept-column-widths.ts';

export class WidthsOfColumns {
  #widths: ColumnWidths = $state.raw(keptColumnWidths());

  /** Characters by column key; a column that was never resized is left out. */
  of(grid: string): Readonly<Record<string, number>> {
    return this.#widths[grid] ?? {};
  }

  set(grid: string, widthsCh: Readonly<Record<string, number>>): void {
    this.#widths = { ...this.#widths, [grid]: widthsCh };
    keepColumnWidths(this.#widths);
  }
}
