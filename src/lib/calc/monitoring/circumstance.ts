/** Whether a row of the case mix, on its plan, meets what a monitoring rule asks: yes, no, or nobody can tell yet. */
import type { Airway, Agent, Pneumoperitoneum, Technique } from '../input.ts';
import type { Circumstance } from '../reference/standards/monitoring-rule.ts';

/** The facts of one case-mix row and its flow plan on which monitoring depends. */
export interface MonitoredCase {
  readonly caseId: string;
  /** Regional stands for a patient with whom verbal contact is kept; sedation is intravenous without an airway. */
  readonly technique: Technique;
  readonly agent: Agent | null;
  readonly nitrousOxidePercent: number;
  readonly pneumoperitoneum: Pneumoperitoneum;
  readonly neuromuscularBlock: boolean;
  readonly airway: Airway;
  /** Lowest fresh gas flow, L/min, over the phases that the case reaches; null: not known. */
  readonly lowestFlowLPerMin: number | null;
}

const possibleAnswers = ['yes', 'no', 'cannot-tell'] as const;
export type Answer = (typeof possibleAnswers)[number];

const yesIf = (met: boolean): Answer => (met ? 'yes' : 'no');
const onlyThePatient = (): Answer => 'cannot-tell';

const isGeneral = ({ technique }: MonitoredCase): boolean => technique !== 'regional';

const flowIs = (within: (flowLPerMin: number) => boolean, flowLPerMin: number | null): Answer =>
  flowLPerMin === null ? 'cannot-tell' : yesIf(within(flowLPerMin));

const answers: Readonly<Record<Circumstance, (row: MonitoredCase) => Answer>> = {
  every: () => 'yes',
  'general-anaesthesia': (row) => yesIf(isGeneral(row)),
  'airway-device': ({ airway }) => yesIf(airway === 'tracheal-tube' || airway === 'supraglottic'),
  'tracheal-tube': ({ airway }) => yesIf(airway === 'tracheal-tube'),
  // A patient breathes through a supraglottic airway on their own or by machine; the row does not say which.
  ventilator: (row) => {
    if (!isGeneral(row)) return 'no';
    if (row.airway === 'tracheal-tube' || row.neuromuscularBlock) return 'yes';
    return row.airway === 'supraglottic' ? 'cannot-tell' : 'no';
  },
  'breathing-system': (row) => yesIf(isGeneral(row) && row.airway !== 'none'),
  'volatile-agent': ({ technique }) => yesIf(technique === 'volatile'),
  sevoflurane: ({ technique, agent }) => yesIf(technique === 'volatile' && agent === 'sevoflurane'),
  'nitrous-oxide': (row) => yesIf(isGeneral(row) && row.nitrousOxidePercent > 0),
  'neuromuscular-block': ({ neuromuscularBlock }) => yesIf(neuromuscularBlock),
  'intravenous-anaesthesia': ({ technique }) => yesIf(technique === 'intravenous'),
  'co2-pneumoperitoneum': ({ pneumoperitoneum }) => yesIf(pneumoperitoneum !== 'none'),
  'flow-up-to-1': ({ lowestFlowLPerMin }) => flowIs((flow) => flow <= 1, lowestFlowLPerMin),
  'flow-below-2': ({ lowestFlowLPerMin }) => flowIs((flow) => flow < 2, lowestFlowLPerMin),
  'temperature-change-expected': onlyThePatient,
  'cardiopulmonary-disease': onlyThePatient,
  'high-awareness-risk': onlyThePatient
};

/** Whether a row meets all of the circumstances: one “no” decides, else one “cannot tell” does. */
export function meets(row: MonitoredCase, circumstances: readonly Circumstance[]): Answer {
  let answer: Answer = 'yes';
  for (const circumstance of circumstances) {
    const given = answers[circumstance](row);
    if (given === 'no') return 'no';
    if (given === 'cannot-tell') answer = given;
  }
  return answer;
}

const allAnswers = Object.values(answers);

/** A number for all answers of a row together: rows of one kind meet the same rules. */
export function kindOf(row: MonitoredCase): number {
  let kind = 0;
  for (const answer of allAnswers)
    kind = kind * possibleAnswers.length + possibleAnswers.indexOf(answer(row));
  return kind;
}
