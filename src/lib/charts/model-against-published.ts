/**
 * The model's figures against published measurements of the same quantity: on the line, they agree. Square, as the
 * distance from the line is what is to be seen; each point bears the number of its row.
 */
import type { ChartData, Mark } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { agentStyle } from './agent-style.ts';

export interface ModelAgainstPublished {
  /** As written in a heading: `Liquid used`. */
  readonly quantity: string;
  /** Empty for a pure number. */
  readonly unit: string;
  readonly scale: 'linear' | 'log';
  readonly checks: readonly {
    readonly what: string;
    /** Points of one group share colour and marker: an agent, a method. */
    readonly group: string;
    readonly published: number;
    readonly model: number;
    /** Author and year. */
    readonly source: string;
    /** Name by which the model's figure can be asked where it comes from. */
    readonly path?: string;
  }[];
}

/** How far from the line the dashed lines are. */
const beside = 0.25;
/** Room beyond the furthest point, as a share of its figure. */
const room = 0.08;

export function modelAgainstPublished({ quantity, unit, scale, checks }: ModelAgainstPublished): ChartData {
  const figures = { kind: 'number', unit } as const;
  const withUnit = (title: string): string => (unit === '' ? title : `${title}, ${unit}`);
  const off = ({ model, published }: { model: number; published: number }): number => model / published - 1;
  // A ratio to nothing, or a logarithm of it, says nothing: such rows are kept to the table.
  const drawn = checks.filter(({ published, model }) => published > 0 && (scale === 'linear' || model > 0));
  const groups = [...new Set(drawn.map(({ group }) => group))];
  const near = drawn.filter((check) => Math.abs(off(check)) <= beside).length;
  const worst = drawn.toSorted((a, b) => Math.abs(off(b)) - Math.abs(off(a)))[0];
  const percentOff = (check: { model: number; published: number }): string =>
    `${figureText(Math.abs(100 * off(check)), { kind: 'percent' })} ${off(check) < 0 ? 'below' : 'above'}`;

  const empty =
    drawn.length === 0 ? `No published measurement of ${quantity.toLowerCase()} to compare with.` : null;
  const values = drawn.flatMap(({ published, model }) => [published, model]);
  const span = {
    least: scale === 'log' ? Math.min(...values) / (1 + 2 * room) : 0,
    most: Math.max(...values) * (1 + (scale === 'log' ? 2 : 1) * room)
  };
  const numberOf = (check: (typeof checks)[number]): number => drawn.indexOf(check) + 1;
  const marks: Mark[] = [
    { kind: 'ratio', yOverX: 1, label: 'model = published' },
    { kind: 'ratio', yOverX: 1 + beside, label: '+25 %' },
    { kind: 'ratio', yOverX: 1 - beside, label: '−25 %' }
  ];

  return {
    title: `${quantity}: model against published`,
    summary:
      empty ??
      `${near} of ${drawn.length} figures lie within 25 % of the published one` +
        (worst === undefined ? '.' : `; the furthest, ${worst.what}, is ${percentOff(worst)} it.`),
    empty,
    kind: 'plot',
    stacked: false,
    isSquare: true,
    x: { title: withUnit('Published'), scale, figures, ...(empty === null ? span : {}) },
    y: { title: withUnit('Model'), scale, figures, ...(empty === null ? span : {}) },
    series: groups.map((group, index) => ({
      label: group,
      drawn: 'points',
      named: 'in-key',
      style: agentStyle(group, index),
      points: drawn
        .filter((check) => check.group === group)
        .map((check) => ({
          x: check.published,
          y: check.model,
          name: `${numberOf(check)}: ${check.what}`,
          label: String(numberOf(check))
        }))
    })),
    marks: empty === null ? marks : [],
    table: {
      columns: [
        nameColumn('What'),
        numberColumn('Point'),
        nameColumn('Group'),
        numberColumn(withUnit('Published')),
        numberColumn(withUnit('Model')),
        numberColumn('Model − published, %'),
        nameColumn('Source')
      ],
      rows: checks.map((check) => ({
        cells: [
          nameCell(check.what),
          numberCell(drawn.includes(check) ? numberOf(check) : null),
          nameCell(check.group),
          numberCell(check.published),
          numberCell(check.model, check.path),
          numberCell(check.published > 0 ? 100 * off(check) : null),
          nameCell(check.source)
        ]
      }))
    }
  };
}
