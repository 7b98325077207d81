/** What stands in the tables of a workbook, cell by cell, before a file format writes it. */
import { entryKey } from '#lib/workbook/edit-rows.ts';
import { isConstantPath } from '#lib/workbook/ranged-constants.ts';
import { rangedFieldAt } from '#lib/workbook/ranged-field.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import type { Field } from '#lib/workbook/field.ts';
import { agentOptions, monitorItemOptions, moveFields, paymentFields } from '#lib/workbook/fields.ts';
import { gradeInWords, standingNotes } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { AttachedField } from './attached-fields.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { entryNames } from './entry-names.ts';
import type { TableColumn, TableId } from './tables.ts';
import { columnsOf, headerOf, settings } from './tables.ts';

export type TableCell =
  /** A cell of the document. */
  | { readonly kind: 'cell'; readonly path: string; readonly field: Field }
  /** What an entry holds beside its cells. */
  | { readonly kind: 'attached'; readonly path: string; readonly field: AttachedField }
  | { readonly kind: 'text'; readonly text: string }
  /** A number, or an amount as decimal text. */
  | { readonly kind: 'number'; readonly value: number | string };

const text = (given: string): TableCell => ({ kind: 'text', text: given });
const number = (value: number | string): TableCell => ({ kind: 'number', value });

/** The rows of a table without its headings, each with as many cells as the table has columns. */
export function tableCells(table: TableId, workbook: Workbook): readonly (readonly TableCell[])[] {
  switch (table) {
    case 'settings':
      return settings.map(({ path, section, field }) => [
        text(section),
        text(headerOf(field, workbook.currency)),
        { kind: 'cell', path, field }
      ]);
    case 'plansByCase': {
      const [cases, plans] = [entryNames(workbook.caseMix), entryNames(workbook.flowPlans)];
      const scenarios = entryNames(workbook.scenarios);
      return workbook.scenarios.flatMap(({ id, flowPlanByCase }) =>
        Object.entries(flowPlanByCase).map(([caseId, plan]) => [
          text(scenarios.textOf(id)),
          text(cases.textOf(caseId)),
          text(plans.textOf(plan))
        ])
      );
    }
    case 'moves': {
      const scenarios = entryNames(workbook.scenarios);
      return workbook.scenarios.flatMap(({ id, moves }) =>
        moves.map(({ payment }, place) => {
          const base = `scenarios.${id}.moves.${place}`;
          const cells = (at: string, fields: Readonly<Record<string, Field>>): readonly TableCell[] =>
            Object.entries(fields).map(([key, field]) => ({ kind: 'cell', path: `${at}.${key}`, field }));
          return [
            text(scenarios.textOf(id)),
            ...cells(base, moveFields),
            ...(payment === null
              ? Object.keys(paymentFields).map(() => text(''))
              : cells(`${base}.payment`, paymentFields))
          ];
        })
      );
    }
    case 'avoidedPurchases': {
      const scenarios = entryNames(workbook.scenarios);
      return workbook.scenarios.flatMap(({ id, avoidedPurchases }) =>
        avoidedPurchases.map(({ year, units, unitPrice }) => [
          text(scenarios.textOf(id)),
          number(year),
          number(units),
          number(unitPrice)
        ])
      );
    }
    case 'ranges': {
      const nameOf = entryNameReader(workbook);
      return Object.entries(workbook.ranges).map(([path, { low, high }]) => [
        text(nameOf(path) ?? (isConstantPath(path) ? 'Evidence' : '')),
        text(rangedFieldAt(workbook, path)?.title ?? ''),
        text(path),
        number(low),
        number(high)
      ]);
    }
    case 'notes': {
      const nameOf = entryNameReader(workbook);
      return standingNotes(workbook).map(([path, { text: words, date, grade }]) => [
        text(nameOf(path) ?? ''),
        text(fieldAt(path)?.title ?? ''),
        text(path),
        text(grade === null ? '' : gradeInWords(grade)),
        text(date ?? ''),
        text(words)
      ]);
    }
    case 'ownFigures':
      return workbook.overrides.map(({ constant, value, unit, reason }) => [
        text(constant),
        number(value),
        text(unit),
        text(reason)
      ]);
    case 'flowPlans': {
      const columns = columnsOf(table, workbook.currency);
      return workbook.flowPlans.flatMap(({ id, phases }) =>
        phases.map((_, index) =>
          columns.map((column) =>
            cellAt(column, {
              id,
              path:
                column.key === 'plan'
                  ? `flowPlans.${id}.name`
                  : `flowPlans.${id}.phases.${index}.${column.key}`
            })
          )
        )
      );
    }
    default: {
      const columns = columnsOf(table, workbook.currency);
      return (workbook[table] as readonly object[]).map((entry) => {
        const id = entryKey(entry);
        return columns.map((column) => cellAt(column, { id, path: `${table}.${id}.${column.key}` }));
      });
    }
  }
}

function cellAt({ field, attached }: TableColumn, { id, path }: { id: string; path: string }): TableCell {
  if (attached !== undefined) return { kind: 'attached', path, field: attached };
  return field === null ? text(id) : { kind: 'cell', path, field };
}

/** Tells what the entry is called in which a cell lies; null for a cell outside the lists. */
export function entryNameReader(workbook: Workbook): (path: string) => string | null {
  const valueAt = cellReader(workbook);
  const labels = new Map([...agentOptions, ...monitorItemOptions].map(({ id, label }) => [id, label]));
  return (path) => {
    const [list = '', key = ''] = path.split('.');
    const entry = valueAt(`${list}.${key}`);
    if (typeof entry !== 'object' || entry === null) return null;
    return 'name' in entry ? String(entry.name) : (labels.get(key) ?? null);
  };
}
