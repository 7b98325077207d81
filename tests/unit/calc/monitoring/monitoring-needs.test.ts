import { describe, expect, it } from 'vitest';
import type { MonitorItem } from '#lib/calc/input.ts';
import { meets } from '#lib/calc/monitoring/circumstance.ts';
import type { MonitoredCase } from '#lib/calc/monitoring/circumstance.ts';
import { monitoringNeeds } from '#lib/calc/monitoring/monitoring-needs.ts';
import type { MonitoringQuestion } from '#lib/calc/monitoring/monitoring-needs.ts';
import { monitorsToBuy } from '#lib/calc/monitoring/monitors-to-buy.ts';
import { theatresMissing } from '#lib/calc/monitoring/theatres-missing.ts';
import { circumstances } from '#lib/calc/reference/standards/monitoring-rule.ts';
import type { Circumstance } from '#lib/calc/reference/standards/monitoring-rule.ts';
import { monitoringDocuments } from '#lib/calc/reference/standards/standards.ts';
import {
  intravenousLaparoscopy,
  intravenousSupraglottic,
  spinal,
  ventilatedAdult
} from './monitored-case.ts';

/** A theatre group with so many of a monitor. */
const having = (monitors: Readonly<Partial<Record<MonitorItem, number>>>) => ({ id: 'main', monitors });

describe('a circumstance', () => {
  const mask: MonitoredCase = { ...ventilatedAdult, airway: 'mask', neuromuscularBlock: false };
  const sedation: MonitoredCase = { ...intravenousSupraglottic, airway: 'none' };
  const yesNoUnknown: Record<
    Circumstance,
    [MonitoredCase | null, MonitoredCase | null, MonitoredCase | null]
  > = {
    every: [spinal, null, null],
    'general-anaesthesia': [sedation, spinal, null],
    'airway-device': [intravenousSupraglottic, mask, null],
    'tracheal-tube': [ventilatedAdult, intravenousSupraglottic, null],
    ventilator: [ventilatedAdult, mask, intravenousSupraglottic],
    'breathing-system': [mask, sedation, null],
    'volatile-agent': [ventilatedAdult, intravenousLaparoscopy, null],
    sevoflurane: [{ ...ventilatedAdult, agent: 'sevoflurane' }, ventilatedAdult, null],
    'nitrous-oxide': [{ ...ventilatedAdult, nitrousOxidePercent: 60 }, ventilatedAdult, null],
    'neuromuscular-block': [ventilatedAdult, spinal, null],
    'intravenous-anaesthesia': [intravenousLaparoscopy, ventilatedAdult, null],
    'co2-pneumoperitoneum': [intravenousLaparoscopy, ventilatedAdult, null],
    'flow-up-to-1': [{ ...ventilatedAdult, lowestFlowLPerMin: 1 }, ventilatedAdult, spinal],
    'flow-below-2': [{ ...ventilatedAdult, lowestFlowLPerMin: 1.99 }, ventilatedAdult, spinal],
    'temperature-change-expected': [null, null, ventilatedAdult],
    'cardiopulmonary-disease': [null, null, ventilatedAdult],
    'high-awareness-risk': [null, null, ventilatedAdult]
  };

  it.each(Object.entries(yesNoUnknown))('%s is told from the row, or said to be unknown', (id, rows) => {
    const answers = ['yes', 'no', 'cannot-tell'];
    rows.forEach((row, index) => {
      if (row !== null) expect(meets(row, [id as Circumstance])).toBe(answers[index]);
    });
  });

  it('is in words for each', () => {
    expect(Object.keys(yesNoUnknown).sort()).toEqual(Object.keys(circumstances).sort());
  });

  it('that is not met outweighs one that nobody can tell', () => {
    expect(meets(spinal, ['high-awareness-risk', 'general-anaesthesia'])).toBe('no');
    expect(meets(ventilatedAdult, ['high-awareness-risk', 'general-anaesthesia'])).toBe('cannot-tell');
  });
});

describe('each rule', () => {
  const rows: MonitoredCase[] = [
    ventilatedAdult,
    { ...ventilatedAdult, agent: 'sevoflurane', nitrousOxidePercent: 50, lowestFlowLPerMin: 0.5 },
    intravenousLaparoscopy,
    intravenousSupraglottic,
    spinal
  ];
  const rules = monitoringDocuments.flatMap((document) =>
    document.rules.map((rule) => [rule.id, rule, document.id] as const)
  );

  it.each(rules)('%s has a case that triggers it, and one that does not unless it is for all', (id, rule) => {
    const answers = rows.map((row) => meets(row, rule.when));
    const onlyPatient = rule.when.some((circumstance) =>
      ['temperature-change-expected', 'cardiopulmonary-disease', 'high-awareness-risk'].includes(circumstance)
    );
    expect(answers).toContain(onlyPatient ? 'cannot-tell' : 'yes');
    const forAll = rule.when.every((circumstance) =>
      ['every', 'temperature-change-expected'].includes(circumstance)
    );
    if (!forAll) expect(answers).toContain('no');
  });
});

describe('theatres without an item', () => {
  const withCapnographs = (number: number) => having({ capnography: number });
  const equipment = { asking: [{ group: withCapnographs(3), theatres: 4, builtIn: [] }] };
  /** Four theatres, in some of which the machine brings it. */
  const brought = (item: 'capnography' | 'ecg', theatres: number, group = withCapnographs(3)) => [
    { group, theatres, builtIn: [item] },
    { group, theatres: 4 - theatres, builtIn: [] }
  ];

  it('are those beyond the stock', () => {
    expect(theatresMissing('capnography', equipment)).toBe(1);
    expect(
      theatresMissing('capnography', { asking: [{ group: withCapnographs(9), theatres: 4, builtIn: [] }] })
    ).toBe(0);
  });

  it('are only those that ask for it', () => {
    expect(
      theatresMissing('capnography', { asking: [{ group: withCapnographs(1), theatres: 2, builtIn: [] }] })
    ).toBe(1);
  });

  it('are fewer where the machines bring it, and the stock goes to the others', () => {
    const lacking = (theatres: number, inStock: number) =>
      theatresMissing('capnography', {
        asking: brought('capnography', theatres, withCapnographs(inStock))
      });
    expect(lacking(4, 3)).toBe(0);
    // Two theatres with a capnograph and two machines that bring one make four of four.
    expect(lacking(2, 2)).toBe(0);
    expect(lacking(2, 1)).toBe(1);
    expect(lacking(2, 0)).toBe(2);
  });

  it('cannot be told where no stock was given, unless the machines bring it to every theatre', () => {
    expect(theatresMissing('ecg', equipment)).toBeNull();
    expect(theatresMissing('ecg', { asking: brought('ecg', 3) })).toBeNull();
    expect(theatresMissing('ecg', { asking: brought('ecg', 4) })).toBe(0);
  });

  it('are counted by the capnographs for the detection of CO2 at intubation', () => {
    expect(theatresMissing('co2-at-intubation', equipment)).toBe(1);
  });

  it.each(['leak-test', 'absorbent-check', 'anaesthesia-provider', 'sevoflurane-flow-caution'] as const)(
    'are not counted for %s, which is no device',
    (measure) => {
      expect(theatresMissing(measure, equipment)).toBeNull();
    }
  );
});

describe('a list of needs', () => {
  /** Cases that are all done in four theatres of one kind. */
  const inFour = (cases: MonitoredCase[], monitors = { capnography: 3, ecg: 4 }) => [
    { group: having(monitors), theatres: 4, builtIn: ['inspired-oxygen' as const], cases }
  ];
  const question: MonitoringQuestion = {
    standard: 'cas',
    facilityLevel: null,
    places: inFour([spinal, ventilatedAdult, { ...intravenousLaparoscopy, lowestFlowLPerMin: 0.5 }]),
    prices: [
      { item: 'capnography', unitPrice: '2600.00' },
      { item: 'ecg', unitPrice: '800.00' }
    ]
  };

  it('names for each rule the rows that trigger it, where it lacks and at what price', () => {
    expect(monitoringNeeds(question).find(({ rule }) => rule === 'cas.capnography')).toEqual({
      item: 'capnography',
      level: 'required',
      word: 'required',
      standard: 'cas',
      layer: 'standard',
      rule: 'cas.capnography',
      trigger: circumstances['general-anaesthesia'],
      applies: 'yes',
      detail: 'Also with moderate to deep sedation.',
      evidence: 'second-hand',
      why: ['adult', 'laparoscopy'],
      theatresMissing: 1,
      places: [0],
      unitPrice: '2600.00'
    });
  });

  it('says “when triggered” only while no row triggers it for certain', () => {
    const alarm = (cases: MonitoredCase[]) =>
      monitoringNeeds({ ...question, standard: 'asa', places: inFour(cases) }).find(
        ({ item }) => item === 'disconnect-alarm'
      );
    expect(alarm([intravenousSupraglottic])).toMatchObject({ applies: 'when-triggered', why: ['short'] });
    expect(alarm([intravenousSupraglottic, ventilatedAdult])).toMatchObject({
      applies: 'yes',
      why: ['adult']
    });
    expect(alarm([spinal])).toBeUndefined();
  });

  it('is empty for an empty case mix', () => {
    expect(monitoringNeeds({ ...question, places: inFour([]) })).toEqual([]);
  });

  it('heeds the facility level for WHO-WFSA alone', () => {
    const count = (standard: 'cas' | 'who-wfsa', facilityLevel: number) =>
      monitoringNeeds({ ...question, standard, facilityLevel }).length;
    expect(count('cas', 1)).toBe(count('cas', 3));
    expect(count('who-wfsa', 1)).toBeLessThan(count('who-wfsa', 2));
    expect(count('who-wfsa', 2)).toBeLessThan(count('who-wfsa', 3));
  });

  it('gives each required and lacking monitor once, with all that require it', () => {
    const { toBuy, cannotTell } = monitorsToBuy(question);
    expect(toBuy).toEqual([
      {
        item: 'capnography',
        theatresMissing: 1,
        asking: question.places,
        unitPrice: '2600.00',
        requiredBy: ['cas', 'eaes-pneumoperitoneum', 'low-flow']
      }
    ]);
    expect(cannotTell).toEqual([
      'pulse-oximetry',
      'non-invasive-blood-pressure',
      'agent-concentration',
      'airway-pressure',
      'exhaled-volume',
      'neuromuscular'
    ]);
  });

  it('buys nothing that is only recommended, or that only the patient on the day can trigger', () => {
    const asked: MonitoringQuestion = {
      ...question,
      standard: 'asa',
      places: question.places.map((place) => ({
        ...place,
        group: having({ temperature: 0, neuromuscular: 0 })
      })),
      prices: [
        { item: 'temperature', unitPrice: '350.00' },
        { item: 'neuromuscular', unitPrice: '1900.00' }
      ]
    };
    const needs = monitoringNeeds(asked);
    expect(needs.find(({ item }) => item === 'temperature')?.applies).toBe('when-triggered');
    expect(needs.find(({ item }) => item === 'neuromuscular')?.level).toBe('recommended');
    expect(monitorsToBuy(asked).toBuy).toEqual([]);
  });
});
