import type { Workbook } from '#lib/workbook/workbook.ts';
import { foldHeader } from '#lib/workbook/match-headings.ts';
import { columnNotes } from './column-notes.ts';
import type { ImportPreview, ImportRequest, RefusedRow } from './import-request.ts';
import type { PlacedText } from './place-texts.ts';
import { placeTexts } from './place-texts.ts';
import { headerOf, settings } from '../tables/tables.ts';

/** `previewImport` for the settings: one row of the file for each, found by section and name. */
export function importSettings(before: Workbook, request: ImportRequest): ImportPreview {
  const { file, mapping } = request;
  const refusedRows: RefusedRow[] = [];
  const texts: PlacedText[] = [];
  for (const { line, texts: cells } of file.rows) {
    const textOf = (column: string) => cells[mapping.indexOf(column)] ?? '';
    const [section, name] = [foldHeader(textOf('section')), foldHeader(textOf('setting'))];
    const found = settings.filter(
      (setting) =>
        foldHeader(headerOf(setting.field, before.currency)) === name &&
        (section === '' || foldHeader(setting.section) === section)
    );
    const [only] = found;
    if (only === undefined || found.length > 1)
      refusedRows.push({
        line,
        sentence:
          only === undefined
            ? `There is no setting “${textOf('setting')}”${section === '' ? '' : ` in ${textOf('section')}`}.`
            : `“${textOf('setting')}” stands in ${found.map((each) => each.section).join(' and ')}: say which in the column Section.`
      });
    else texts.push({ path: only.path, text: textOf('value'), line, column: textOf('setting') });
  }
  const placed = placeTexts(before, texts, request);
  return {
    workbook: placed.workbook,
    added: 0,
    changed: placed.differing.length,
    unchanged: texts.length - placed.differing.length,
    removed: [],
    empties: false,
    refusedCells: placed.refusedCells,
    refusedRows,
    notes: [...columnNotes(request, [], 0), ...placed.notes]
  };
}
