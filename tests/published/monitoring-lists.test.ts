/**
 * What the published monitoring standards ask for in six typical cases. Each list is whole, and stands for each standard
 * and each facility level: a result that is not on it fails, and so does a rule that is added for such a case. Sources stand with each standard: Gelb 2018 (WHO-WFSA), ASA basic monitoring and its guideline of 2023,
 * Klein 2021 (Association of Anaesthetists), Dobson 2023 (CAS), PG18 2017 (ANZCA), the Japanese guideline of 2019,
 * Neudecker 2002 (laparoscopy), reviews of low flow. A line reads: level, item, and `?` where only the patient on the
 * day can tell.
 */
import { describe, expect, it } from 'vitest';
import { facilityLevels, needsOf } from '../unit/calc/monitoring/needs-of.ts';
import {
  intravenousLaparoscopy,
  intravenousSupraglottic,
  spinal,
  ventilatedAdult
} from '../unit/calc/monitoring/monitored-case.ts';

/** Every standard, WHO-WFSA at each of its levels and at all of them. */
const everyLevel = facilityLevels.flatMap(([standard, level]) =>
  level === null ? [[standard, null] as const] : [1, 2, 3, null].map((each) => [standard, each] as const)
);

/** A list in two, the second part beginning behind the line. */
function splitAfter(lines: readonly string[], line: string): readonly [readonly string[], readonly string[]] {
  const at = lines.indexOf(line) + 1;
  if (at === 0) throw new Error(`“${line}” is not on the list.`);
  return [lines.slice(0, at), lines.slice(at)];
}

describe('an adult with a tube and a volatile agent in oxygen and air, ventilated, with a blocker, at 2 L/min', () => {
  const row = ventilatedAdult;

  it('WHO-WFSA level 1: oximetry, blood pressure, CO2 at intubation, and somebody trained who stays', () => {
    expect(needsOf('who-wfsa', row, 1)).toEqual([
      'required anaesthesia-provider',
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required co2-at-intubation'
    ]);
  });

  it('WHO-WFSA level 2 adds what is recommended, level 3 what is suggested', () => {
    const level2 = [
      ...needsOf('who-wfsa', row, 1),
      'recommended capnography',
      'recommended inspired-oxygen',
      'recommended ecg',
      'recommended disconnect-alarm',
      'recommended neuromuscular'
    ];
    expect(needsOf('who-wfsa', row, 2)).toEqual(level2);
    expect(needsOf('who-wfsa', row, 3)).toEqual([...level2, 'suggested processed-eeg ?']);
    expect(needsOf('who-wfsa', row, null)).toEqual(needsOf('who-wfsa', row, 3));
  });

  it('ASA: temperature if a change is expected; the agent is not asked for', () => {
    expect(needsOf('asa', row)).toEqual([
      'required pulse-oximetry',
      'required capnography',
      'required inspired-oxygen',
      'required disconnect-alarm',
      'required ecg',
      'required non-invasive-blood-pressure',
      'required temperature ?',
      'recommended exhaled-volume',
      'recommended neuromuscular'
    ]);
  });

  it('Association of Anaesthetists: a minimum, and what should be there', () => {
    expect(needsOf('association-of-anaesthetists', row)).toEqual([
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required ecg',
      'required capnography',
      'required temperature',
      'recommended inspired-oxygen',
      'recommended agent-concentration',
      'recommended airway-pressure',
      'recommended exhaled-volume',
      'recommended neuromuscular'
    ]);
  });

  it('CAS: agent, pressure, volume and neuromuscular monitoring too, temperature at hand', () => {
    expect(needsOf('cas', row)).toEqual([
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required ecg',
      'required capnography',
      'required agent-concentration',
      'required airway-pressure',
      'required exhaled-volume',
      'required neuromuscular',
      'available temperature'
    ]);
  });

  it('ANZCA: the ECG, blood pressure, temperature and processed EEG have to be available', () => {
    expect(needsOf('anzca', row)).toEqual([
      'required pulse-oximetry',
      'required inspired-oxygen',
      'required capnography',
      'required agent-concentration',
      'required disconnect-alarm',
      'available ecg',
      'available non-invasive-blood-pressure',
      'available temperature',
      'available processed-eeg'
    ]);
  });

  it('JSA: temperature and neuromuscular monitoring are required', () => {
    expect(needsOf('jsa', row)).toEqual([
      'required pulse-oximetry',
      'required ecg',
      'required non-invasive-blood-pressure',
      'required capnography',
      'required temperature',
      'required neuromuscular',
      'recommended exhaled-volume'
    ]);
  });
});

describe('the same with sevoflurane and nitrous oxide', () => {
  const row = { ...ventilatedAdult, agent: 'sevoflurane', nitrousOxidePercent: 50 } as const;

  it('Association of Anaesthetists: nitrous oxide should be measured, beside the agent', () => {
    const [before, after] = splitAfter(
      needsOf('association-of-anaesthetists', ventilatedAdult),
      'recommended agent-concentration'
    );
    expect(needsOf('association-of-anaesthetists', row)).toEqual([
      ...before,
      'recommended nitrous-oxide-concentration',
      ...after
    ]);
  });

  it.each(everyLevel.filter(([standard]) => standard !== 'association-of-anaesthetists'))(
    '%s, level %s: no more than before',
    (standard, facilityLevel) => {
      expect(needsOf(standard, row, facilityLevel)).toEqual(
        needsOf(standard, ventilatedAdult, facilityLevel)
      );
    }
  );
});

describe('the same at 0.5 L/min', () => {
  const lowFlow = [
    'required inspired-oxygen (low-flow)',
    'required agent-concentration (low-flow)',
    'required capnography (low-flow)',
    'recommended leak-test (low-flow)',
    'recommended absorbent-check (low-flow)'
  ];

  it.each(everyLevel)(
    '%s, level %s: as before, with the low-flow layer on top',
    (standard, facilityLevel) => {
      const before = needsOf(standard, ventilatedAdult, facilityLevel);
      const after = needsOf(standard, { ...ventilatedAdult, lowestFlowLPerMin: 0.5 }, facilityLevel);
      expect(after).toEqual([...before, ...lowFlow]);
    }
  );
});

describe('intravenous with a blocker, laparoscopic', () => {
  const row = intravenousLaparoscopy;
  const laparoscopy = [
    'required capnography (laparoscopy)',
    'recommended arterial-blood-gas ? (laparoscopy)'
  ];

  it('WHO-WFSA level 1: as for the adult with a tube, and capnography as EAES demands it', () => {
    expect(needsOf('who-wfsa', row, 1)).toEqual([...needsOf('who-wfsa', ventilatedAdult, 1), ...laparoscopy]);
  });

  it('WHO-WFSA levels 2 and 3: as for the adult with a tube too', () => {
    for (const level of [2, 3, null])
      expect(needsOf('who-wfsa', row, level)).toEqual([
        ...needsOf('who-wfsa', ventilatedAdult, level),
        ...laparoscopy
      ]);
  });

  it('JSA: the same as with a volatile agent, as it does not ask for the agent', () => {
    expect(needsOf('jsa', row)).toEqual([...needsOf('jsa', ventilatedAdult), ...laparoscopy]);
  });

  it('ASA: the same as with a volatile agent, as it does not ask for the agent anyway', () => {
    expect(needsOf('asa', row)).toEqual([...needsOf('asa', ventilatedAdult), ...laparoscopy]);
  });

  it('Association of Anaesthetists: processed EEG, no agent', () => {
    expect(needsOf('association-of-anaesthetists', row)).toEqual([
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required ecg',
      'required capnography',
      'required temperature',
      'recommended inspired-oxygen',
      'recommended airway-pressure',
      'recommended exhaled-volume',
      'recommended neuromuscular',
      'recommended processed-eeg',
      ...laparoscopy
    ]);
  });

  it.each(['cas', 'anzca'] as const)('%s: no agent', (standard) => {
    const withoutAgent = needsOf(standard, ventilatedAdult).filter((line) => !line.includes('agent'));
    expect(needsOf(standard, row)).toEqual([...withoutAgent, ...laparoscopy]);
  });
});

describe('intravenous with a supraglottic airway, no blocker', () => {
  const row = intravenousSupraglottic;

  it('WHO-WFSA level 1: no tube, so no CO2 detection for it', () => {
    expect(needsOf('who-wfsa', row, 1)).toEqual([
      'required anaesthesia-provider',
      'required pulse-oximetry',
      'required non-invasive-blood-pressure'
    ]);
  });

  it('ASA: capnography; the disconnect alarm if a ventilator is used', () => {
    expect(needsOf('asa', row)).toEqual([
      'required pulse-oximetry',
      'required capnography',
      'required inspired-oxygen',
      'required disconnect-alarm ?',
      'required ecg',
      'required non-invasive-blood-pressure',
      'required temperature ?',
      'recommended exhaled-volume'
    ]);
  });

  it('Association of Anaesthetists: neither processed EEG nor neuromuscular monitoring', () => {
    expect(needsOf('association-of-anaesthetists', row)).toEqual([
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required ecg',
      'required capnography',
      'required temperature',
      'recommended inspired-oxygen',
      'recommended airway-pressure ?',
      'recommended exhaled-volume ?'
    ]);
  });

  it('CAS: neither agent nor neuromuscular monitoring', () => {
    expect(needsOf('cas', row)).toEqual([
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required ecg',
      'required capnography',
      'required airway-pressure ?',
      'required exhaled-volume ?',
      'available temperature'
    ]);
  });

  it('WHO-WFSA level 2 adds what is recommended, level 3 what is suggested', () => {
    const level2 = [
      ...needsOf('who-wfsa', row, 1),
      'recommended capnography',
      'recommended inspired-oxygen',
      'recommended ecg',
      'recommended disconnect-alarm ?'
    ];
    expect(needsOf('who-wfsa', row, 2)).toEqual(level2);
    expect(needsOf('who-wfsa', row, 3)).toEqual([...level2, 'suggested processed-eeg ?']);
    expect(needsOf('who-wfsa', row, null)).toEqual(needsOf('who-wfsa', row, 3));
  });

  it('ANZCA: no agent, and the disconnect alarm if a ventilator is used', () => {
    expect(needsOf('anzca', row)).toEqual([
      'required pulse-oximetry',
      'required inspired-oxygen',
      'required capnography',
      'required disconnect-alarm ?',
      'available ecg',
      'available non-invasive-blood-pressure',
      'available temperature',
      'available processed-eeg'
    ]);
  });

  it('JSA: no neuromuscular monitoring without a blocker', () => {
    expect(needsOf('jsa', row)).toEqual([
      'required pulse-oximetry',
      'required ecg',
      'required non-invasive-blood-pressure',
      'required capnography',
      'required temperature',
      'recommended exhaled-volume ?'
    ]);
  });
});

describe('spinal, no sedation', () => {
  it('WHO-WFSA level 1: oximetry and blood pressure', () => {
    expect(needsOf('who-wfsa', spinal, 1)).toEqual([
      'required anaesthesia-provider',
      'required pulse-oximetry',
      'required non-invasive-blood-pressure'
    ]);
  });

  it('WHO-WFSA levels 2 and 3: an ECG too', () => {
    for (const level of [2, 3, null])
      expect(needsOf('who-wfsa', spinal, level)).toEqual([
        ...needsOf('who-wfsa', spinal, 1),
        'recommended ecg'
      ]);
  });

  it('ASA: oximetry, ECG, blood pressure; no capnography, no inspired oxygen', () => {
    expect(needsOf('asa', spinal)).toEqual([
      'required pulse-oximetry',
      'required ecg',
      'required non-invasive-blood-pressure',
      // The trigger of the standard, an expected change of temperature, does not stop at regional anaesthesia.
      'required temperature ?'
    ]);
  });

  it('Association of Anaesthetists: oximetry, blood pressure, ECG', () => {
    expect(needsOf('association-of-anaesthetists', spinal)).toEqual([
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required ecg'
    ]);
  });

  it('CAS: the same, with temperature at hand', () => {
    expect(needsOf('cas', spinal)).toEqual([
      'required pulse-oximetry',
      'required non-invasive-blood-pressure',
      'required ecg',
      'available temperature'
    ]);
  });

  it('JSA: temperature too', () => {
    expect(needsOf('jsa', spinal)).toEqual([
      'required pulse-oximetry',
      'required ecg',
      'required non-invasive-blood-pressure',
      'required temperature'
    ]);
  });

  it('ANZCA: nothing was read about it', () => {
    expect(needsOf('anzca', spinal)).toEqual([]);
  });
});

describe('common practice, no source', () => {
  it.each(facilityLevels)(
    '%s: capnography is required for every laparoscopic general anaesthetic',
    (standard, facilityLevel) => {
      for (const technique of ['volatile', 'intravenous'] as const)
        for (const pneumoperitoneum of ['intraperitoneal', 'gynaecological', 'extraperitoneal'] as const) {
          const row = { ...ventilatedAdult, technique, pneumoperitoneum };
          expect(needsOf(standard, row, facilityLevel)).toContain('required capnography (laparoscopy)');
        }
    }
  );
});

describe('the flow caution of the US sevoflurane label', () => {
  const caution = 'caution sevoflurane-flow-caution (label)';
  const sevoflurane = { ...ventilatedAdult, agent: 'sevoflurane' } as const;
  it.each([
    ['is shown below 2 L/min', 1.9, true],
    ['is shown at 0.99 L/min', 0.99, true],
    ['is not shown at 2 L/min, which is outside its clause', 2, false]
  ])('%s', (_, lowestFlowLPerMin, shown) => {
    expect(needsOf('asa', { ...sevoflurane, lowestFlowLPerMin }).includes(caution)).toBe(shown);
  });

  it('is not shown for another agent', () => {
    expect(needsOf('asa', { ...ventilatedAdult, lowestFlowLPerMin: 0.5 })).not.toContain(caution);
  });
});
