import { expect, it } from 'vitest';
import { caseCourse } from '#lib/charts/case-course.ts';

const minutes = Array.from({ length: 121 }, (_, index) => index / 2);
const plan = (name: string, minutesToTarget: number | null) => ({
  name,
  targetPercent: 2,
  minutes,
  flowLPerMin: minutes.map(() => 1),
  vapourMlPerMin: minutes.map(() => 20),
  dialPercent: minutes.map(() => 4),
  inspiredPercent: minutes.map(() => 3),
  endTidalPercent: minutes.map((minute) => Math.min(2, minute)),
  minutesToTarget
});
const given = { caseName: 'Hernia repair', agent: 'Sevoflurane' };

it('draws dial, inspired and end-tidal, told apart by their dashes, and the target', () => {
  const chart = caseCourse({ ...given, plans: [plan('Low flow', 4.5)] });
  expect(chart.series.map(({ label, style }) => [label, style.dash])).toEqual([
    ['Dial', 'dotted'],
    ['Inspired', 'dashed'],
    ['End-tidal', 'solid']
  ]);
  expect(chart.marks).toEqual([
    { kind: 'level', axis: 'y', at: 2, label: 'Target, end-tidal', tone: 'limit' }
  ]);
});

it('names the plan on each line where there are several, one colour a plan', () => {
  const chart = caseCourse({ ...given, plans: [plan('Low flow', 4.5), plan('Closed circuit', null)] });
  expect(chart.series.map(({ label }) => label)).toContain('Inspired, Closed circuit');
  const [first, , , fourth, fifth] = chart.series.map(({ style }) => style.colour);
  expect(fourth).not.toBe(first);
  expect(fifth).toBe(fourth);
  // Not by colour alone.
  expect(chart.series[3]?.style.widthPx).not.toBe(chart.series[0]?.style.widthPx);
  expect(chart.summary).toBe(
    'Low flow reaches the target of 2\u00a0% end-tidal after 4.5\u00a0min. ' +
      'Closed circuit does not reach the target of 2\u00a0% end-tidal.'
  );
});

it('has a row every five minutes and one at the end', () => {
  const short = { ...plan('Low flow', 4.5), minutes: minutes.slice(0, 25) };
  const { rows } = caseCourse({ ...given, plans: [short] }).table;
  expect(rows.map(({ cells }) => cells[1]?.value)).toEqual([0, 5, 10, 12]);
});

it('has a target for each agent where a scenario gives another one', () => {
  const other = { ...plan('Closed circuit', 3), targetPercent: 6 };
  const { marks } = caseCourse({ ...given, plans: [plan('Today', 4), plan('Low flow', 4), other] });
  expect(marks.map((mark) => ('label' in mark ? mark.label : ''))).toEqual([
    'Target, end-tidal, Today',
    'Target, end-tidal, Closed circuit'
  ]);
});

it('has a sentence where there is nothing to draw', () => {
  const none = { ...plan('Low flow', null), minutes: [] };
  expect(caseCourse({ ...given, plans: [none] }).empty).toMatch(/Choose a case with an inhaled agent\.$/);
  expect(caseCourse({ ...given, plans: [] }).empty).toMatch(/tick at least one scenario\.$/);
});
