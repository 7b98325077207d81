/** Options as points, and what each change of one earns. */
import { describe, expect, it } from 'vitest';
import { tonnesAgainstWorth } from '#lib/charts/tonnes-against-worth.ts';
import { whatEachChangeEarns } from '#lib/charts/what-each-change-earns.ts';

const step = (lever: 'agent' | 'flow' | 'machine', yearlySaving: string, co2eAvoidedKg: number) => ({
  lever,
  yearlySaving,
  co2eAvoidedKg,
  npv: '0',
  investment: '0'
});

describe('what each change earns', () => {
  const given = {
    measure: 'money',
    currency: 'EUR',
    scenario: { id: 'a', name: 'Closed', place: 2 },
    ladder: [
      step('agent', '500.375', 70_000),
      step('flow', '1500.375', 12_000),
      step('machine', '-300', 2000)
    ],
    ladderRoom: 'ladder',
    attribution: [step('agent', '400', 60_000), step('flow', '1500', 20_000), step('machine', '-199.2', 4000)]
  } as const;
  const bars = (chart: ReturnType<typeof whatEachChangeEarns>) =>
    chart.series
      .flatMap(({ label, points }) => points.map(({ x, y, from }) => ({ label, x, y, from })))
      .sort((a, b) => a.y - b.y);

  it('begins each bar where the one before it ended, and ends at the whole', () => {
    const drawn = bars(whatEachChangeEarns(given));
    expect(drawn.map(({ from }) => from)).toEqual([0, 500.375, 2000.75, 0]);
    expect(drawn.map(({ x }) => x)).toEqual([500.375, 2000.75, 1700.75, 1700.75]);
  });

  it('tells a change that costs from one that saves', () => {
    expect(bars(whatEachChangeEarns(given)).map(({ label }) => label)).toEqual([
      'Saves',
      'Saves',
      'Costs',
      'Together'
    ]);
  });

  it('says in its title which change brings most and what the machine does', () => {
    expect(whatEachChangeEarns(given).title).toBe(
      'Lower flow saves most of what Closed saves a year; the machine, coming third, costs €300.00'
    );
    expect(whatEachChangeEarns({ ...given, measure: 'tonnes' }).title).toBe(
      'Another agent avoids most of what Closed avoids a year; the machine, coming third, avoids 2\u00a0t'
    );
  });

  it('does not say “most” of a change that brings less than half', () => {
    const ladder = [step('agent', '400', 0), step('flow', '350', 0), step('machine', '300', 0)];
    expect(whatEachChangeEarns({ ...given, ladder }).title).toBe(
      'Another agent saves more than any other change of Closed; the machine, coming third, saves €300.00'
    );
  });

  it('has both ways of sharing in its table, each with its path, and parts that add up as shown', () => {
    const { rows } = whatEachChangeEarns(given).table;
    expect(rows.map(({ cells }) => cells.map(({ text }) => text))).toEqual([
      ['Another agent', '501', '400'],
      ['Lower flow', '1,500', '1,500'],
      ['The machine itself', '\u2212300', '\u2212199'],
      ['Closed', '1,701', '1,701']
    ]);
    expect(rows[2]?.cells.map(({ path }) => path)).toEqual([
      undefined,
      'a.ladder.machine.yearlySaving',
      'a.attribution.machine.yearlySaving'
    ]);
    expect(rows[3]?.cells[1]?.path).toBe('a.againstBaseline.yearlySaving');
  });

  it('asks for a rung in the order in which it stands, and says which place the machine has', () => {
    const ladder = [step('machine', '250', 0), step('agent', '700', 0)];
    const chart = whatEachChangeEarns({ ...given, ladder, ladderRoom: 'ladderInOrder.machine+agent' });
    expect(chart.table.rows[0]?.cells[1]?.path).toBe('a.ladderInOrder.machine+agent.machine.yearlySaving');
    expect(chart.title).toMatch(/; the machine, coming first, saves €250\.00$/);
  });

  it('takes a share by its lever, not by its place', () => {
    const attribution = given.attribution.toReversed();
    expect(
      whatEachChangeEarns({ ...given, attribution }).table.rows.map(({ cells }) => cells[2]?.text)
    ).toEqual(['400', '1,500', '\u2212199', '1,701']);
  });

  it('has nothing to draw where one thing is changed', () => {
    const chart = whatEachChangeEarns({ ...given, ladder: [step('flow', '900', 1)] });
    expect(chart.empty).toBe('Nothing to take apart: Closed changes one thing only.');
  });
});

describe('tonnes avoided against net present value', () => {
  const option = (
    id: string,
    place: number | null,
    [co2eAvoidedKg, npv]: readonly [number, string],
    isTwin = false
  ) => ({
    id,
    name: id.toUpperCase(),
    place,
    isTwin,
    isChosen: id === 'a',
    co2eAvoidedKg,
    npv,
    path: `${id}.againstBaseline`
  });
  const given = {
    currency: 'EUR',
    appraisalYears: 10,
    options: [
      option('today', null, [0, '0']),
      option('a-twin', 0, [90_000, '1500'], true),
      option('a', 0, [94_000, '700'])
    ],
    taken: ['today', 'a-twin']
  };
  const dots = (chart: ReturnType<typeof tonnesAgainstWorth>) =>
    chart.series.filter(({ drawn }) => drawn === 'points');

  it('has a labelled dot for each option', () => {
    expect(dots(tonnesAgainstWorth(given)).map(({ points }) => points)).toEqual([
      [{ x: 0, y: 0, label: 'TODAY', name: 'TODAY' }],
      [{ x: 90, y: 1500, label: 'A-TWIN', name: 'A-TWIN' }],
      [{ x: 94, y: 700, label: 'A', name: 'A' }]
    ]);
  });

  it('gives a twin its scenario’s colour, hollow, and draws the chosen one large', () => {
    const [, twin, scenario] = dots(tonnesAgainstWorth(given)).map(({ style }) => style);
    expect(twin).toMatchObject({ colour: scenario?.colour, isHollow: true, isLarge: false });
    expect(scenario).toMatchObject({ isHollow: false, isLarge: true });
  });

  it('joins the steps that are taken, in their order, and nothing else', () => {
    const way = tonnesAgainstWorth(given).series.find(({ drawn }) => drawn === 'line');
    expect(way?.points).toEqual([
      { x: 0, y: 0 },
      { x: 90, y: 1500 }
    ]);
    expect(tonnesAgainstWorth({ ...given, taken: ['today'] }).series).toHaveLength(3);
  });

  it('says which is worth most and which avoids most', () => {
    expect(tonnesAgainstWorth(given).title).toBe('A-TWIN is worth most; A avoids most');
    expect(tonnesAgainstWorth({ ...given, options: given.options.slice(0, 2) }).title).toBe(
      'A-TWIN is worth most and avoids most'
    );
  });

  it('has each option in its table, with its paths', () => {
    expect(tonnesAgainstWorth(given).table.rows[2]?.cells).toEqual([
      { text: 'A', value: 'A' },
      { text: '94', value: 94, path: 'a.againstBaseline.co2eAvoidedKg' },
      { text: '700', value: '700', path: 'a.againstBaseline.npv' }
    ]);
  });

  it('has a sentence where there is no option beside today', () => {
    expect(tonnesAgainstWorth({ ...given, options: given.options.slice(0, 1) }).empty).toMatch(/no option/);
  });
});
