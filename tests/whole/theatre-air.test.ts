/** The air of a department so small that it can be reckoned by hand. */
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Site, TheatreGroup } from '#lib/calc/input.ts';
import { airLimitPlaces, airLimits, noAirLimit } from '#lib/calc/reference/exposure-limit-terms.ts';
import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { oneGroup } from '../fixtures/one-group.ts';
import { hernia, hip, neck, oldMachine, wholeWorkbook } from '../fixtures/whole-workbook.ts';

const room = { roomVolumeM3: 110, airChangesPerH: 20, scavengingPercent: 90, airMixingPercent: 50 };
const base = wholeWorkbook();

function airOf(
  group: Partial<TheatreGroup> = {},
  { site = {}, caseMix = base.caseMix }: { site?: Partial<Site>; caseMix?: typeof base.caseMix } = {}
) {
  const workbook = wholeWorkbook({
    site: { ...base.site, ...site },
    caseMix,
    theatreGroups: oneGroup(2, oldMachine.id, { ...room, ...group })
  });
  const [today] = estimate(coreInput(workbook)).scenarios;
  if (today === undefined) throw new Error('There is no scenario.');
  return today;
}
const lineOf = (today: ReturnType<typeof airOf>, subject: string) => {
  const line = today.theatreAir.rooms[0]?.lines.find((each) => each.subject === subject);
  if (line === undefined) throw new Error(`There is no line of ${subject}.`);
  return line;
};

test('what escapes is all of the leak and a tenth of the rest, and the room thins it', () => {
  const today = airOf();
  const one = today.cases.find(({ caseId }) => caseId === hernia.id);
  if (one === undefined) throw new Error('There is no such case.');
  // Sevoflurane: 1.52 g/mL, 200.05 g/mol, 20 °C.
  const vapourL = (liquidMl: number) => (liquidMl * 1.52 * 24.055) / 200.05;
  const minutes = hernia.minutes;
  const flow = (one.oxygenL + one.airL + one.nitrousOxideL) / minutes;
  const oxygen = 10 * hernia.weightKg ** 0.75;
  const spill = flow - oxygen / 1000 + (vapourL(one.liquidMl) - vapourL(one.takenUpMl)) / minutes;
  const leak = oldMachine.leakMlPerMin / 1000 / spill;
  const escaping = (vapourL(one.spilledMl) / minutes) * (leak + 0.1 * (1 - leak));
  const line = lineOf(today, 'sevoflurane');
  const steady = (60_000 * escaping) / (10 * 110);
  expect(line.escapingLPerMin).toBeCloseTo(escaping, 6);
  expect(line.steadyPpm).toBeCloseTo(steady, 4);
  expect(line.endOfCasePpm).toBeCloseTo(steady * (1 - Math.exp(-10)), 4);
  const all = [hernia, neck, hip].map((row) => row.casesPerYear * row.minutes);
  const share = (hernia.casesPerYear * hernia.minutes) / all.reduce((sum, each) => sum + each, 0);
  expect(line.meanPpm).toBeCloseTo(steady * share, 4);

  const ofGas = lineOf(today, 'nitrous-oxide');
  expect(ofGas.escapingLPerMin).toBeCloseTo((one.nitrousOxideL / minutes) * (leak + 0.1 * (1 - leak)), 6);
});

test('the course rises to the end of the case and falls after it', () => {
  const { course, endOfCasePpm } = lineOf(airOf(), 'sevoflurane');
  const end = course.findIndex(({ minute }) => minute === hernia.minutes);
  expect(course[end]?.ppm).toBe(endOfCasePpm);
  for (const [index, { ppm }] of course.entries())
    if (index > 0) expect(ppm > (course[index - 1]?.ppm ?? 0), String(index)).toBe(index <= end);
});

test('without scavenging all that is spilled escapes, and with all of it the leak alone', () => {
  const escaping = (scavengingPercent: number) =>
    lineOf(airOf({ scavengingPercent }), 'sevoflurane').escapingLPerMin ?? NaN;
  expect(escaping(90)).toBeCloseTo(0.1 * escaping(0) + 0.9 * escaping(100), 9);
  expect(escaping(100)).toBeGreaterThan(0);
});

test.each(['roomVolumeM3', 'airChangesPerH', 'scavengingPercent'] as const)(
  'a room without %s is named, and its lines stand without a figure, never as 0',
  (key) => {
    const [without] = airOf({ [key]: null }).theatreAir.rooms;
    expect(without?.missing).toHaveLength(1);
    expect(without?.lines.map(({ subject }) => subject)).toEqual(['sevoflurane', 'nitrous-oxide']);
    for (const line of without?.lines ?? [])
      expect([line.escapingLPerMin, line.steadyPpm, line.endOfCasePpm, line.meanPpm, line.course]).toEqual([
        null,
        null,
        null,
        null,
        []
      ]);
  }
);

test('the recovery room has what patients took up and do not metabolise, over the hours it is open', () => {
  const today = airOf(
    {},
    {
      site: {
        recoveryRoomVolumeM3: 200,
        recoveryAirChangesPerH: 6,
        recoveryHoursPerYear: 2000,
        recoveryGivenOffPercent: 50
      }
    }
  );
  const one = today.cases.find(({ caseId }) => caseId === hernia.id);
  const takenUpL = ((one?.takenUpMl ?? NaN) * hernia.casesPerYear * 1.52 * 24.055) / 200.05;
  const [line] = today.theatreAir.recovery.lines;
  expect(line?.meanPpm).toBeCloseTo((60_000 * takenUpL * 0.95 * 0.5) / (2000 * 60 * 6 * 200), 4);
});

test('a recovery room of which nothing is told has no figure', () => {
  const { missing, lines } = airOf().theatreAir.recovery;
  expect(missing).toHaveLength(3);
  expect(lines.map(({ meanPpm }) => meanPpm)).toEqual([null]);
});

test('a limit over eight hours is held against the mean, one over the administration against the highest case', () => {
  const inBritain = airOf({}, { site: { airLimitsOf: 'united-kingdom' } });
  const gas = lineOf(inBritain, 'nitrous-oxide');
  expect(gas.heldAgainst.map(({ averaging, ppm }) => [averaging, ppm])).toEqual([['working-day', 100]]);
  expect(gas.heldAgainst[0]?.sharePercent).toBeCloseTo(gas.meanPpm ?? NaN, 9);
  const inAmerica = lineOf(airOf({}, { site: { airLimitsOf: 'united-states' } }), 'sevoflurane');
  expect(inAmerica.heldAgainst.map(({ averaging }) => averaging)).toEqual(['while-given']);
  expect(inAmerica.heldAgainst[0]?.sharePercent).toBeCloseTo(50 * (inAmerica.steadyPpm ?? NaN), 9);
});

test('where no limit is on record, that is said, and that it is no all-clear', () => {
  const line = lineOf(airOf({}, { site: { airLimitsOf: 'united-kingdom' } }), 'sevoflurane');
  expect(line.heldAgainst).toEqual([]);
  expect(line.noLimit).toMatch(/no exposure limit for sevoflurane.*no all-clear.*occupational health/);
  for (const place of airLimitPlaces)
    for (const subject of [
      'sevoflurane',
      'isoflurane',
      'desflurane',
      'halothane',
      'enflurane',
      'nitrous-oxide'
    ])
      if (airLimits(newestReferenceSet, subject, place).length === 0)
        expect(noAirLimit(place, subject)).toMatch(/no all-clear.*local law and occupational health/);
});

test('every limit on record stands under a place, with its averaging time', () => {
  const limits = [...newestReferenceSet.constants.values()].filter(({ kind }) => kind === 'exposure-limit');
  const subjects = ['sevoflurane', 'isoflurane', 'desflurane', 'halothane', 'enflurane', 'nitrous-oxide'];
  const found = new Set(
    subjects.flatMap((subject) => airLimits(newestReferenceSet, subject).map(({ limit }) => limit.id))
  );
  expect([...found].sort()).toEqual(limits.map(({ id }) => id).sort());
  const whileGiven = subjects.flatMap((subject) =>
    airLimits(newestReferenceSet, subject).flatMap(({ averaging, limit }) =>
      averaging === 'while-given' ? [limit.id.replace('exposure-limit.', '')] : []
    )
  );
  expect([...new Set(whileGiven)].sort()).toEqual([
    'france.halogenated-agents',
    'france.nitrous-oxide',
    'united-states.halogenated-agents',
    'united-states.nitrous-oxide'
  ]);
});

test('case groups that are done elsewhere are in no room’s air', () => {
  const [main] = oneGroup(2, oldMachine.id, room);
  const workbook = wholeWorkbook({
    theatreGroups: [main, { ...main, id: 'day', name: 'Day' }],
    caseMix: base.caseMix.map((row) => ({
      ...row,
      theatreGroups: { main: row.id === hernia.id ? 100 : 0, day: 0 }
    }))
  });
  const rooms = estimate(coreInput(workbook)).scenarios[0]?.theatreAir.rooms ?? [];
  expect(rooms.map(({ lines }) => lines.length)).toEqual([2, 0]);
});
