/**
 * From today to a scenario, change by change: a bar for each lever that begins where the one before it ended, and the
 * whole below. The bars are the rungs of the ladder, so they add up to the scenario; beside them the table has each
 * change's share over all orders, which does not hang on its place.
 */
import type { LadderStep, LeverPart } from '#lib/calc/estimate-types.ts';
import type { Lever } from '#lib/calc/input.ts';
import type { ChartData, ChartPoint, TableCell } from './chart-data.ts';
import { cellsThatAddUp, nameCell, nameColumn, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { seriesStyle } from './series-style.ts';

export interface WhatEachChangeEarns {
  readonly measure: 'money' | 'tonnes';
  readonly currency: string;
  /** `place`: 0 for the first scenario that is not today; it sets the colour, as in the other charts. */
  readonly scenario: { readonly id: string; readonly name: string; readonly place: number };
  /** In the order in which the changes are made. */
  readonly ladder: readonly LadderStep[];
  /** Where the rungs lie below the scenario’s id: `ladder`, or `ladderInOrder.` and their order. */
  readonly ladderRoom: string;
  /** The same levers, each by its share over all orders. */
  readonly attribution: readonly LeverPart[];
}

export const leverNames: Readonly<Record<Lever, string>> = {
  agent: 'Another agent',
  technique: 'Another technique',
  flow: 'Lower flow',
  machine: 'The machine itself',
  adoption: 'More cases that follow',
  capture: 'Capture of vapour',
  'nitrous-oxide': 'Nitrous oxide supply',
  scavenging: 'Hours of scavenging pumps'
};

export function whatEachChangeEarns(given: WhatEachChangeEarns): ChartData {
  const { measure, currency, scenario, ladder, ladderRoom, attribution } = given;
  const isMoney = measure === 'money';
  const figures = isMoney ? ({ kind: 'money', currency } as const) : ({ kind: 'number', unit: 't' } as const);
  const figure = isMoney ? 'yearlySaving' : 'co2eAvoidedKg';
  const amountOf = (part: LeverPart): number | string =>
    isMoney ? part.yearlySaving : part.co2eAvoidedKg / 1000;
  const signed = (amount: number): string => figureText(amount, figures);

  const amounts = ladder.map((step) => Number(amountOf(step)));
  const ends = amounts.map((_, place) => amounts.slice(0, place + 1).reduce((sum, each) => sum + each, 0));
  const whole = ends.at(-1) ?? 0;
  const names = ladder.map(({ lever }) => leverNames[lever]);
  const steps = (which: (amount: number) => boolean): ChartPoint[] =>
    amounts.flatMap((amount, y) => {
      const label = signed(amount);
      const name = `${names[y] ?? ''}: ${label}`;
      return which(amount) ? [{ x: ends[y] ?? 0, y, from: ends[y - 1] ?? 0, label, name }] : [];
    });
  const empty =
    ladder.length < 2
      ? `Nothing to take apart: ${scenario.name} changes ${ladder.length === 0 ? 'nothing' : 'one thing only'}.`
      : null;
  const what = isMoney ? 'saves' : 'avoids';

  const cells = (parts: readonly LeverPart[], room: string) =>
    cellsThatAddUp(parts.map(amountOf), {
      money: isMoney,
      paths: [
        ...parts.map(({ lever }) => `${scenario.id}.${room}.${lever}.${figure}`),
        `${scenario.id}.againstBaseline.${figure}`
      ]
    });
  const inTurn = cells(ladder, ladderRoom);
  const shares = cells(attribution, 'attribution');
  const shareOf = ({ lever }: LadderStep): TableCell =>
    shares.parts[attribution.findIndex((part) => part.lever === lever)] ?? nameCell('');
  const unit = isMoney ? currency : 't CO₂e';

  return {
    title: findingOf(given, { amounts, whole, figures }),
    summary:
      empty ??
      `What ${scenario.name} ${what} a year, one change after the other: ${ladder
        .map((_, place) => `${(names[place] ?? '').toLowerCase()} ${signed(amounts[place] ?? 0)}`)
        .join(', ')}; together ${signed(whole)}.`,
    empty,
    kind: 'rows',
    stacked: false,
    x: {
      title: isMoney ? `Saved a year against today, ${currency}` : 'CO₂e avoided a year against today, t',
      scale: 'linear',
      figures
    },
    y: { title: 'Change', scale: 'names', figures, names: [...names, scenario.name] },
    series: [
      {
        label: isMoney ? 'Saves' : 'Avoids',
        drawn: 'bars' as const,
        named: 'by-labels' as const,
        style: seriesStyle(4),
        points: steps((amount) => amount >= 0)
      },
      {
        label: isMoney ? 'Costs' : 'Adds',
        drawn: 'bars' as const,
        named: 'by-labels' as const,
        style: seriesStyle(5),
        points: steps((amount) => amount < 0)
      },
      {
        label: 'Together',
        drawn: 'bars' as const,
        named: 'by-labels' as const,
        style: seriesStyle(scenario.place),
        points: [
          {
            x: whole,
            y: ladder.length,
            from: 0,
            label: signed(whole),
            name: `${scenario.name}: ${signed(whole)}`
          }
        ]
      }
    ].filter(({ points }) => points.length > 0),
    marks: [{ kind: 'level', axis: 'x', at: 0, label: '', tone: 'zero' }],
    table: {
      columns: [
        nameColumn('Change'),
        numberColumn(`After those above it, ${unit} a year`),
        numberColumn(`Its share over all orders, ${unit} a year`)
      ],
      rows: [
        ...ladder.map((step, place) => ({
          cells: [nameCell(names[place] ?? ''), inTurn.parts[place] ?? nameCell(''), shareOf(step)]
        })),
        { cells: [nameCell(scenario.name), inTurn.total, shares.total], total: true }
      ]
    }
  };
}

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];

/** Which change brings most, and what the machine brings where one is bought. */
function findingOf(
  { measure, scenario, ladder }: WhatEachChangeEarns,
  {
    amounts,
    whole,
    figures
  }: { amounts: readonly number[]; whole: number; figures: Parameters<typeof figureText>[1] }
): string {
  const [good, bad] = measure === 'money' ? (['saves', 'costs'] as const) : (['avoids', 'adds'] as const);
  const said = (amount: number): string =>
    `${amount < 0 ? bad : good} ${figureText(Math.abs(amount), figures)}`;
  const most = Math.max(...amounts);
  const lever = ladder[amounts.indexOf(most)]?.lever;
  if (lever === undefined || most <= 0) return `${scenario.name} ${said(whole)} a year`;
  const first = leverNames[lever];
  const opening =
    most > whole / 2 && most <= whole
      ? `${first} ${good} most of what ${scenario.name} ${good} a year`
      : `${first} ${good} more than any other change of ${scenario.name}`;
  const at = ladder.findIndex((step) => step.lever === 'machine');
  if (at < 0 || lever === 'machine') return opening;
  return `${opening}; the machine, coming ${ordinals[at] ?? 'last'}, ${said(amounts[at] ?? 0)}`;
}
