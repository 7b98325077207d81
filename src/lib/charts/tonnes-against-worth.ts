/**
 * Options of which one is chosen, each as a point: further right it avoids more, higher up it is worth more. A scenario's
 * twin without the machine has its colour and is hollow. The steps that pay one after the other are joined.
 */
import type { ChartData, Series } from './chart-data.ts';
import { moneyCell, nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { seriesStyle, todaysPlace } from './series-style.ts';

export interface TonnesAgainstWorth {
  readonly currency: string;
  readonly appraisalYears: number;
  readonly options: readonly {
    readonly id: string;
    readonly name: string;
    /** 0 for the first scenario that is not today, and for its twin; null: today. It sets the colour. */
    readonly place: number | null;
    readonly isTwin: boolean;
    readonly isChosen: boolean;
    readonly co2eAvoidedKg: number;
    readonly npv: string;
    /** Where its figures lie in the estimate, e.g. `closed.againstBaseline`. */
    readonly path: string;
  }[];
  /** Ids of today and of the options whose step from the one before is taken, in this order; empty: not known. */
  readonly taken: readonly string[];
}

type Option = TonnesAgainstWorth['options'][number];

export function tonnesAgainstWorth({
  currency,
  appraisalYears,
  options,
  taken
}: TonnesAgainstWorth): ChartData {
  const money = { kind: 'money', currency } as const;
  const tonnes = { kind: 'number', unit: 't' } as const;
  const at = ({ co2eAvoidedKg, npv }: Option) => ({ x: co2eAvoidedKg / 1000, y: Number(npv) });
  const points = options.map((option): Series => {
    const style = seriesStyle(option.place ?? todaysPlace);
    return {
      label: option.name,
      drawn: 'points',
      named: 'by-labels',
      style: { ...style, marker: 'circle', isHollow: option.isTwin, isLarge: option.isChosen },
      points: [{ ...at(option), label: option.name, name: option.name }]
    };
  });
  const onTheWay = taken.flatMap((id) => options.find((option) => option.id === id) ?? []);
  const way: Series[] =
    onTheWay.length < 2
      ? []
      : [
          {
            label: 'Steps that pay, one after the other',
            drawn: 'line',
            named: 'in-key',
            style: { colour: 8, dash: 'dotted', marker: 'circle', widthPx: 1.5 },
            points: onTheWay.map(at)
          }
        ];
  const best = options.reduce<Option | null>(
    (most, option) => (most === null || Number(option.npv) > Number(most.npv) ? option : most),
    null
  );
  const cleanest = options.reduce<Option | null>(
    (most, option) => (most === null || option.co2eAvoidedKg > most.co2eAvoidedKg ? option : most),
    null
  );
  const empty =
    options.length < 2
      ? 'Nothing to draw: there is no option beside today’s practice. Add one on the Scenarios sheet.'
      : null;
  const worth = (option: Option): string => figureText(Number(option.npv), money);
  const avoided = (option: Option): string => figureText(option.co2eAvoidedKg / 1000, tonnes);
  const summary =
    best === null || cleanest === null
      ? ''
      : best === cleanest
        ? `${best.name} has both the highest net present value, ${worth(best)}, and the most tonnes avoided, ${avoided(best)} a year.`
        : `${best.name} has the highest net present value, ${worth(best)}, and avoids ${avoided(best)} a year; most tonnes are avoided by ${cleanest.name}, ${avoided(cleanest)}, at a net present value of ${worth(cleanest)}.`;
  const tonnesTitle = 'CO₂e avoided a year, t';
  const worthTitle = `Net present value over ${figureText(appraisalYears, { kind: 'number', unit: 'years' })}, ${currency}`;

  return {
    title:
      best === null || empty !== null
        ? 'Tonnes avoided against net present value'
        : best === cleanest
          ? `${best.name} is worth most and avoids most`
          : `${best.name} is worth most; ${cleanest?.name ?? ''} avoids most`,
    summary:
      empty ?? `${summary} Further right avoids more, higher up is worth more; hollow: without the machine.`,
    empty,
    kind: 'plot',
    stacked: false,
    x: {
      title: tonnesTitle,
      scale: 'linear',
      figures: tonnes,
      least: 0,
      // Room for the dot that avoids most.
      most: (Math.max(0, ...options.map(({ co2eAvoidedKg }) => co2eAvoidedKg)) / 1000) * 1.05
    },
    y: { title: worthTitle, scale: 'linear', figures: money, least: 0 },
    series: [...way, ...points],
    marks: [{ kind: 'level', axis: 'y', at: 0, label: '', tone: 'zero' }],
    table: {
      columns: [nameColumn('Option'), numberColumn(tonnesTitle), numberColumn(worthTitle)],
      rows: options.map(({ name, co2eAvoidedKg, npv, path }) => ({
        cells: [
          nameCell(name),
          numberCell(co2eAvoidedKg / 1000, `${path}.co2eAvoidedKg`),
          moneyCell(npv, `${path}.npv`)
        ]
      }))
    }
  };
}
