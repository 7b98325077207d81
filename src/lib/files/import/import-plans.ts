import type { FlowPlan, Phase } from '#lib/calc/input.ts';
import { freshId } from '#lib/workbook/edit-rows.ts';
import { keptOf } from '#lib/workbook/kept-by-path.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';
import { columnNotes } from './column-notes.ts';
import type { TextRow } from '../read/read-table.ts';
import type { ImportPreview, ImportRequest, RefusedRow } from './import-request.ts';
import { keepOnly } from './keep-only.ts';
import type { PlacedText } from './place-texts.ts';
import { placeTexts } from './place-texts.ts';
import { columnsOf } from '../tables/tables.ts';

/** What a phase starts from where the file does not say. */
const startPhase: Phase = {
  name: 'New phase',
  minutes: 5,
  flowLPerMin: 2,
  flowAsNeeded: false,
  vaporiser: 'hold',
  dialPercent: null
};

/** The rows of one plan, which may lie anywhere in the file. */
interface PlanRows {
  readonly name: string;
  readonly id: string;
  readonly rows: readonly TextRow[];
}

/** `previewImport` for flow plans: one row of the file for each phase; rows of the same id, or else name, make a plan. */
export function importPlans(before: Workbook, request: ImportRequest): ImportPreview {
  const { file, mapping, mode } = request;
  const textOf = (row: TextRow, column: string) => row.texts[mapping.indexOf(column)] ?? '';
  const refusedRows: RefusedRow[] = [];
  const texts: PlacedText[] = [];
  const reached: string[] = [];
  const isNew = new Set<string>();
  let workbook = before;
  for (const group of plansOf(file.rows, textOf)) {
    const refusal = refusalOf(group, textOf);
    const known = mode === 'append' ? undefined : knownPlan(workbook, group);
    const room = known !== undefined || workbook.flowPlans.length < limits.flowPlans;
    if (refusal !== null || !room) {
      const sentence = refusal ?? `A workbook holds at most ${limits.flowPlans} flow plans.`;
      refusedRows.push(...group.rows.map(({ line }) => ({ line, sentence })));
      continue;
    }
    const id = known?.id ?? newId(workbook, group);
    if (known === undefined) isNew.add(id);
    reached.push(id);
    workbook = withPhases(workbook, {
      id,
      known,
      open: group.rows.findIndex((row) => isOpen(textOf(row, 'minutes'))),
      count: group.rows.length
    });
    group.rows.forEach((row, place) =>
      mapping.forEach((column, index) => {
        if (column === null || column === 'id' || (column === 'plan' && place > 0)) return;
        const path = column === 'plan' ? `flowPlans.${id}.name` : `flowPlans.${id}.phases.${place}.${column}`;
        texts.push({ path, text: row.texts[index] ?? '', line: row.line, column: file.headers[index] ?? '' });
      })
    );
  }
  const placed = placeTexts(workbook, texts, request, before);
  const replaced =
    mode === 'replace'
      ? keepOnly(placed.workbook, 'flowPlans', reached)
      : { workbook: placed.workbook, removed: [], notes: [] };
  const after = new Map(placed.workbook.flowPlans.map((plan) => [plan.id, plan]));
  const changed = before.flowPlans.filter(
    (plan) => reached.includes(plan.id) && after.get(plan.id) !== plan
  ).length;
  return {
    workbook: replaced.workbook,
    added: isNew.size,
    changed,
    unchanged: reached.length - isNew.size - changed,
    removed: replaced.removed,
    empties: false,
    refusedCells: placed.refusedCells,
    refusedRows: refusedRows.sort((a, b) => a.line - b.line),
    notes: [...columnNotes(request, columnsOf('flowPlans', before.currency), isNew.size), ...replaced.notes]
  };
}

const isOpen = (minutes: string): boolean => minutes.trim() === '';

function plansOf(
  rows: readonly TextRow[],
  textOf: (row: TextRow, column: string) => string
): readonly PlanRows[] {
  const groups = new Map<string, { name: string; id: string; rows: TextRow[] }>();
  for (const row of rows) {
    const [name, id] = [textOf(row, 'plan').trim(), textOf(row, 'id').trim()];
    const key = id === '' ? `name ${name}` : `id ${id}`;
    const group = groups.get(key) ?? { name, id, rows: [] };
    group.rows.push(row);
    groups.set(key, group);
  }
  return [...groups.values()];
}

function refusalOf(
  { name, id, rows }: PlanRows,
  textOf: (row: TextRow, column: string) => string
): string | null {
  if (name === '' && id === '') return 'The row names no flow plan.';
  const open = rows.filter((row) => isOpen(textOf(row, 'minutes'))).length;
  if (open !== 1)
    return `${open} phases of “${name || id}” have no minutes; exactly one lasts for the rest of the case.`;
  if (rows.length > limits.phases)
    return `“${name || id}” has ${rows.length} phases; a flow plan has at most ${limits.phases}.`;
  return null;
}

function knownPlan(workbook: Workbook, { id, name }: PlanRows): FlowPlan | undefined {
  if (id !== '') return workbook.flowPlans.find((plan) => plan.id === id);
  const named = workbook.flowPlans.filter((plan) => plan.name === name);
  return named.length === 1 ? named[0] : undefined;
}

function newId(workbook: Workbook, { id, name }: PlanRows): string {
  const taken = workbook.flowPlans.map((plan) => plan.id);
  return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(id) && id.length <= 80 && !taken.includes(id)
    ? id
    : freshId(name, taken);
}

/** The workbook with as many phases in a plan as the file has, the open one in its place; new ones have start values. */
function withPhases(
  workbook: Workbook,
  { id, known, open, count }: { id: string; known: FlowPlan | undefined; open: number; count: number }
): Workbook {
  const phases = Array.from({ length: count }, (_, index): Phase => {
    const phase = known?.phases[index] ?? startPhase;
    const minutes = index === open ? null : (phase.minutes ?? startPhase.minutes);
    return minutes === phase.minutes ? phase : { ...phase, minutes };
  });
  if (known === undefined)
    return { ...workbook, flowPlans: [...workbook.flowPlans, { id, name: 'New flow plan', phases }] };
  const same = known.phases.length === count && known.phases.every((phase, index) => phase === phases[index]);
  if (same) return workbook;
  // Phases are known by their place, so what was kept for a place is void once there are others.
  return {
    ...workbook,
    ...keptOf(workbook, (path) => !path.startsWith(`flowPlans.${id}.phases.`)),
    flowPlans: workbook.flowPlans.map((plan) => (plan === known ? { ...plan, phases } : plan))
  };
}
