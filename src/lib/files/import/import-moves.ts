import type { Move, Payment } from '#lib/calc/input.ts';
import { crossChecks } from '#lib/workbook/cross-checks.ts';
import type { Field } from '#lib/workbook/field.ts';
import { quoted } from '#lib/workbook/field.ts';
import { moveFields, paymentFields } from '#lib/workbook/fields.ts';
import { readText } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';
import { entryNames } from '../tables/entry-names.ts';
import { paymentColumnKey } from '../tables/tables.ts';
import { importKeyed } from './import-keyed.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';
import { isSameAmount } from './place-texts.ts';

type Read = { readonly values: Record<string, unknown> } | { readonly sentence: string };

/** `previewImport` for the machines that come to theatres. They have no ids: each is known by its place. */
export function importMoves(workbook: Workbook, request: ImportRequest): ImportPreview {
  const { locale, mode } = request;
  const scenarios = entryNames(workbook.scenarios);
  const taken = new Map(
    workbook.scenarios.map(({ id, moves }) => [id, mode === 'append' ? moves.length : 0])
  );
  const readFields = (fields: Readonly<Record<string, Field>>, textOf: (key: string) => string): Read => {
    const values: Record<string, unknown> = {};
    for (const [key, field] of Object.entries(fields)) {
      const read = readText(textOf(key), { field, workbook, locale });
      if ('sentence' in read) return read;
      values[key] = read.value;
    }
    return { values };
  };
  return importKeyed<Move>(workbook, request, {
    before: new Map(
      workbook.scenarios.flatMap(({ id, moves }) =>
        moves.map((move, place) => [`${id} ${place}`, move] as const)
      )
    ),
    nameOf: (key) => {
      const [scenario = '', place = ''] = key.split(' ');
      return `${scenarios.textOf(scenario)}, machine ${Number(place) + 1}`;
    },
    read: (textOf) => {
      const id = scenarios.idOf(textOf('scenario'));
      if (id === undefined)
        return {
          sentence: `${quoted(textOf('scenario'))} is the name of no scenario, or of more than one: give its id.`
        };
      const move = readFields(moveFields, textOf);
      if ('sentence' in move) return move;
      let payment: Payment | null = null;
      // Without a way of paying the machine is bought.
      if (textOf(paymentColumnKey('kind')) !== '') {
        const paid = readFields(paymentFields, (key) => textOf(paymentColumnKey(key)));
        if ('sentence' in paid) return paid;
        payment = paid.values as unknown as Payment;
      }
      const place = taken.get(id) ?? 0;
      if (place >= limits.moves) return { sentence: `A scenario holds at most ${limits.moves} of these.` };
      taken.set(id, place + 1);
      return {
        key: `${id} ${place}`,
        name: `${textOf('scenario')}, machine ${place + 1}`,
        value: { ...(move.values as unknown as Omit<Move, 'payment'>), payment }
      };
    },
    isSame: (a, b) =>
      areAlike(moveFields, a, b) &&
      (a.payment === null || b.payment === null
        ? a.payment === b.payment
        : areAlike(paymentFields, a.payment, b.payment)),
    put: (moves) => placeMoves(workbook, moves, locale)
  });
}

/** Whether two entries say the same: 12.50 and 12.5 are the same amount. */
const areAlike = <T extends object>(fields: Readonly<Record<string, Field>>, a: T, b: T): boolean =>
  Object.entries(fields).every(([key, { kind }]) => {
    const [x, y] = [a[key as keyof T], b[key as keyof T]];
    return x === y || (kind === 'money' && isSameAmount(x as string, y as string));
  });

/** The workbook with these machines coming; those that do not fit are left out, each with a sentence. */
function placeMoves(
  workbook: Workbook,
  moves: ReadonlyMap<string, Move>,
  locale: string
): { workbook: Workbook; refused: ReadonlyMap<string, string> } {
  const refused = new Map<string, string>();
  const known = new Set(crossChecks(workbook, locale).map(({ path, sentence }) => `${path} ${sentence}`));
  for (;;) {
    const left = [...moves].filter(([key]) => !refused.has(key));
    const placed: Workbook = {
      ...workbook,
      scenarios: workbook.scenarios.map((scenario) => ({
        ...scenario,
        moves: left.flatMap(([key, move]) => (key.split(' ')[0] === scenario.id ? [move] : []))
      }))
    };
    const issue = crossChecks(placed, locale).find(
      ({ path, sentence }) => path.startsWith('scenarios.') && !known.has(`${path} ${sentence}`)
    );
    const [, scenario = '', list = '', entry = ''] = issue?.path.split('.') ?? [];
    const ofScenario = left.filter(([key]) => key.split(' ')[0] === scenario);
    const blamed =
      list === 'plans'
        ? ofScenario.find(([, { machine }]) => machine === entry)
        : (ofScenario[Number(entry)] ?? ofScenario[0]);
    if (issue === undefined || blamed === undefined) return { workbook: placed, refused };
    refused.set(blamed[0], issue.sentence);
  }
}
