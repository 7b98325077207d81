/** The course of one case: dial, inspired and end-tidal agent against time, for one plan or a few. */
import type { ChartData, Dash, Series } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { styleBesideAgents } from './agent-style.ts';

export interface CaseCourse {
  readonly caseName: string;
  readonly agent: string;
  readonly plans: readonly {
    readonly name: string;
    readonly targetPercent: number;
    /** All lists are of one length. */
    readonly minutes: readonly number[];
    readonly flowLPerMin: readonly number[];
    readonly vapourMlPerMin: readonly number[];
    readonly dialPercent: readonly number[];
    readonly inspiredPercent: readonly number[];
    readonly endTidalPercent: readonly number[];
    /** null: not reached. */
    readonly minutesToTarget: number | null;
    /** Name by which a quantity at the point of this place can be asked where it comes from. */
    readonly path?: (quantity: CourseQuantity, point: number) => string;
  }[];
}

export type CourseQuantity =
  'flowLPerMin' | 'vapourMlPerMin' | 'dialPercent' | 'inspiredPercent' | 'endTidalPercent';

const quantities = [
  { key: 'dialPercent', label: 'Dial', dash: 'dotted' },
  { key: 'inspiredPercent', label: 'Inspired', dash: 'dashed' },
  { key: 'endTidalPercent', label: 'End-tidal', dash: 'solid' }
] as const satisfies readonly { key: string; label: string; dash: Dash }[];

/** The dash says which quantity, so the width of the line says, with its colour, which plan. */
const widthsPx = [2.25, 1.25, 3.5];

/** A curve has many points; a table, one every five minutes and the last. */
const tableMinutes = 5;

export function caseCourse({ caseName, agent, plans }: CaseCourse): ChartData {
  const time = { kind: 'number', unit: 'min' } as const;
  const percent = { kind: 'percent' } as const;
  const several = plans.length > 1;
  const sentences = plans.map(({ name, targetPercent, minutesToTarget }) =>
    minutesToTarget === null
      ? `${name} does not reach the target of ${figureText(targetPercent, percent)} end-tidal.`
      : `${name} reaches the target of ${figureText(targetPercent, percent)} end-tidal after ${figureText(minutesToTarget, time)}.`
  );
  const empty =
    plans.length === 0
      ? 'Nothing to draw: tick at least one scenario.'
      : plans.every(({ minutes }) => minutes.length === 0)
        ? `Nothing to draw for ${caseName}: it has no vapour. Choose a case with an inhaled agent.`
        : null;
  // Plans with one agent share a target; after a switch of agent there are two.
  const targets = plans.filter(
    ({ targetPercent }, index) =>
      plans.findIndex((plan) => Math.abs(plan.targetPercent - targetPercent) < 1e-6) === index
  );

  return {
    title: `Course of one case: ${caseName}, ${agent}`,
    summary: empty ?? sentences.join(' '),
    empty,
    kind: 'plot',
    stacked: false,
    x: { title: 'Time, min', scale: 'linear', figures: time, least: 0 },
    y: {
      title: `${agent.charAt(0).toUpperCase()}${agent.slice(1)}, % of the gas`,
      scale: 'linear',
      figures: percent,
      least: 0
    },
    series: plans.flatMap((plan, index) =>
      quantities.map(({ key, label, dash }): Series => ({
        label: several ? `${label}, ${plan.name}` : label,
        drawn: 'line',
        // Most of them end at the target: at their ends names would lie over each other.
        named: 'in-key',
        style: { ...styleBesideAgents(index), dash, widthPx: widthsPx[index % widthsPx.length] ?? 2 },
        points: plan.minutes.flatMap((x, at) => {
          const y = plan[key][at];
          return y === undefined ? [] : [{ x, y }];
        })
      }))
    ),
    marks: targets.map(({ name, targetPercent }) => ({
      kind: 'level',
      axis: 'y',
      at: targetPercent,
      label: targets.length === 1 ? 'Target, end-tidal' : `Target, end-tidal, ${name}`,
      tone: 'limit'
    })),
    table: {
      columns: [
        nameColumn('Flow plan'),
        numberColumn('Time, min'),
        numberColumn('Fresh gas, L/min'),
        numberColumn('Vapour, mL/min'),
        ...quantities.map(({ label }) => numberColumn(`${label}, %`))
      ],
      rows: plans.flatMap((plan) =>
        everyFewMinutes(plan.minutes).map((at) => ({
          cells: [
            nameCell(plan.name),
            numberCell(plan.minutes[at] ?? null),
            numberCell(plan.flowLPerMin[at] ?? null, plan.path?.('flowLPerMin', at)),
            numberCell(plan.vapourMlPerMin[at] ?? null, plan.path?.('vapourMlPerMin', at)),
            ...quantities.map(({ key }) => numberCell(plan[key][at] ?? null, plan.path?.(key, at)))
          ]
        }))
      )
    }
  };
}

function everyFewMinutes(minutes: readonly number[]): number[] {
  let next = 0;
  return minutes.flatMap((minute, at) => {
    if (minute < next && at < minutes.length - 1) return [];
    next = (Math.floor(minute / tableMinutes) + 1) * tableMinutes;
    return [at];
  });
}
