import { fieldAt } from '#lib/workbook/field-at.ts';
import { quoted } from '#lib/workbook/field.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import { placeFault, readSourceNote, standingNotes } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { importKeyed } from './import-keyed.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';
import { entryNameReader } from '../tables/table-cells.ts';

/** `previewImport` for where the figures of single cells come from. */
export function importNotes(workbook: Workbook, request: ImportRequest): ImportPreview {
  const valueAt = cellReader(workbook);
  const entryOf = entryNameReader(workbook);
  const nameOf = (path: string) => [entryOf(path), fieldAt(path)?.title ?? path].filter(Boolean).join(': ');
  return importKeyed<SourceNote>(workbook, request, {
    before: new Map(standingNotes(workbook)),
    nameOf,
    read: (textOf) => {
      const path = textOf('cell');
      const misplaced = placeFault(path);
      if (misplaced !== null) return { sentence: misplaced };
      if (valueAt(path) === undefined)
        return { sentence: `${quoted(path)} is no cell of this workbook, so it cannot have a note.` };
      const read = readSourceNote(
        { text: textOf('text'), date: textOf('date'), grade: textOf('grade') },
        workbook
      );
      if ('sentence' in read) return { sentence: `${nameOf(path)}: ${read.sentence}` };
      if (read.note === null)
        return { sentence: `${nameOf(path)}: nothing was given; a note has a text, a date or a grade.` };
      return { key: path, name: nameOf(path), value: read.note };
    },
    isSame: (a, b) => a.text === b.text && a.date === b.date && a.grade === b.grade,
    put: (notes) => ({ workbook: { ...workbook, notes: Object.fromEntries(notes) }, refused: new Map() })
  });
}
