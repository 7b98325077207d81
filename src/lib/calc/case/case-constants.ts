/** The published constants that a case draws on, picked from a reference set once and kept for all its cases. */
import { agents } from '../input.ts';
import type { Agent, BodyModel, Pneumoperitoneum } from '../input.ts';
import type { Constant } from '../reference/constant.ts';
import { take } from '../reference/reference-set.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';

/** One tissue compartment of a body model, with its partition coefficient for the agent. */
export interface CompartmentConstants {
  readonly volume: Constant;
  readonly share: Constant;
  readonly tissueBlood: Constant;
  readonly isFat: boolean;
}

export interface AgentConstants {
  readonly molarMass: Constant;
  readonly liquidDensity: Constant;
  readonly bloodGas: Constant;
  readonly mac40: Constant;
  readonly vaporiserMaximum: Constant;
  readonly bodies: Readonly<Record<BodyModel, readonly CompartmentConstants[]>>;
}

export interface CaseConstants {
  readonly gasConstant: Constant;
  readonly zeroCelsius: Constant;
  readonly standardAtmosphere: Constant;
  readonly macSlope: Constant;
  readonly nitrousOxideMac40: Constant;
  readonly standardWeight: Constant;
  readonly sizeExponent: Constant;
  readonly cardiacOutput: Constant;
  readonly oxygenUptake: Constant;
  readonly co2Production: Constant;
  readonly childWeightLimit: Constant;
  readonly childOxygenSlope: Constant;
  readonly childOxygenIntercept: Constant;
  readonly childCo2Slope: Constant;
  readonly childCo2Intercept: Constant;
  readonly alveolarFactor: Constant;
  readonly arterialCo2: Constant;
  readonly deadSpace: Constant;
  readonly residualCapacity: Constant;
  readonly lungTissue: Constant;
  readonly circuitVolume: Constant;
  readonly airOxygen: Constant;
  readonly co2Rise: Readonly<Record<Exclude<Pneumoperitoneum, 'none'>, Constant>>;
  /** Weight from which the adult's curves hold, with a bridge to the children's lines below; null: they hold from there. */
  readonly adultWeightLimit: Constant | null;
  readonly childResidualCapacity: Constant | null;
  /** The course of CO2 elimination in time; null: it has risen from the first minute. */
  readonly insufflation: InsufflationConstants | null;
  /** Share of a case's liquid that must be spill before a measurement says anything of practice; null: no such rule. */
  readonly leastSpilledShare: Constant | null;
  /** Null: lung and tissues grow with weight, however large. */
  readonly obesity: ObesityConstants | null;
  /** Null: nitrous oxide is part of the carrier, which nobody takes up. */
  readonly nitrousOxide: NitrousOxideConstants | null;
  /** Null: the set offers no choice of MAC or solubility. */
  readonly groups: ChoiceOfGroups | null;
  readonly agents: Readonly<Record<Agent, AgentConstants>>;
}

/** Published sets of MAC and of solubility that a workbook may choose instead. */
export interface ChoiceOfGroups {
  /** MAC of sevoflurane by its label, with a slope of its own. */
  readonly label: { readonly mac40: Constant; readonly slope: Constant };
  /** MAC within a band of age, whatever the age in it. */
  readonly textbook: {
    readonly youngest: Constant;
    readonly oldest: Constant;
    readonly mac: Readonly<Partial<Record<Agent | 'nitrous-oxide', Constant>>>;
  };
  readonly patients: Readonly<Partial<Record<Agent, Constant>>>;
}

/** What nitrous oxide is followed by as a gas of its own. */
export interface NitrousOxideConstants {
  readonly bloodGas: Constant;
  readonly bodies: Readonly<Record<BodyModel, readonly CompartmentConstants[]>>;
  /** Share of what is taken up in whose place more is inspired, %. */
  readonly drawnInShare: Constant;
}

export interface InsufflationConstants {
  readonly begins: Constant;
  readonly plateau: Constant;
  readonly extraperitoneal: readonly { readonly minute: number; readonly rise: Constant }[];
}

export interface ObesityConstants {
  readonly heightM: Constant;
  readonly bodyMassIndex: Constant;
  readonly residualShare: Constant;
  readonly numerator: Constant;
  readonly manOffset: Constant;
  readonly manSlope: Constant;
  readonly womanOffset: Constant;
  readonly womanSlope: Constant;
}

/** Which compartments a body model has, and which partition coefficient each goes by. */
const compartments: Readonly<Record<BodyModel, readonly { group: string; partition: string }[]>> = {
  eger: [
    { group: 'vessel-rich', partition: 'vessel-rich-blood' },
    { group: 'muscle', partition: 'muscle-blood' },
    { group: 'fat', partition: 'fat-blood' }
  ],
  'reference-adult': [
    { group: 'vessel-rich', partition: 'vessel-rich-blood' },
    { group: 'muscle', partition: 'muscle-blood' },
    { group: 'fat', partition: 'fat-blood' }
  ],
  'two-fat': [
    { group: 'vessel-rich', partition: 'vessel-rich-blood' },
    { group: 'muscle', partition: 'muscle-blood' },
    { group: 'fat-well-perfused', partition: 'fat-blood' },
    { group: 'fat-poorly-perfused', partition: 'fat-blood' }
  ]
};

/** How the ids of rises at a time begin; the minute follows. */
const risesAt = 'insufflation.extraperitoneal.rise-at-';

function pick(set: ReferenceSet): CaseConstants {
  const of = (id: string) => take(set, id);
  const bodyOf = (model: BodyModel, agent: Agent | 'nitrous-oxide') =>
    compartments[model].map(({ group, partition }) => ({
      volume: of(`body.${model}.${group}.volume`),
      share: of(`body.${model}.${group}.share`),
      tissueBlood: of(`${agent}.${partition}`),
      isFat: partition === 'fat-blood'
    }));
  const those = <Gas extends string>(group: string, gases: readonly Gas[]) =>
    Object.fromEntries(
      gases.flatMap((gas) => {
        const found = set.constants.get(`${group}.${gas}`);
        return found === undefined ? [] : [[gas, found]];
      })
    ) as Partial<Record<Gas, Constant>>;
  const bodiesFor = (gas: Agent | 'nitrous-oxide') => ({
    eger: bodyOf('eger', gas),
    'reference-adult': bodyOf('reference-adult', gas),
    'two-fat': bodyOf('two-fat', gas)
  });
  const agentOf = (agent: Agent): AgentConstants => ({
    molarMass: of(`${agent}.molar-mass`),
    liquidDensity: of(`${agent}.liquid-density`),
    bloodGas: of(`${agent}.blood-gas`),
    mac40: of(`${agent}.mac40`),
    vaporiserMaximum: of(`${agent}.vaporiser-maximum`),
    bodies: bodiesFor(agent)
  });
  return {
    gasConstant: of('gas-constant'),
    zeroCelsius: of('zero-celsius'),
    standardAtmosphere: of('standard-atmosphere'),
    macSlope: of('mac.age-slope'),
    nitrousOxideMac40: of('nitrous-oxide.mac40'),
    standardWeight: of('body.standard-weight'),
    sizeExponent: of('body.size-exponent'),
    cardiacOutput: of('body.cardiac-output.coefficient'),
    oxygenUptake: of('body.oxygen-consumption.coefficient'),
    co2Production: of('body.co2-production.coefficient'),
    childWeightLimit: of('child.weight-limit'),
    childOxygenSlope: of('child.oxygen-consumption.slope'),
    childOxygenIntercept: of('child.oxygen-consumption.intercept'),
    childCo2Slope: of('child.co2-production.slope'),
    childCo2Intercept: of('child.co2-production.intercept'),
    alveolarFactor: of('alveolar-ventilation.factor'),
    arterialCo2: of('arterial-co2'),
    deadSpace: of('lung.dead-space'),
    residualCapacity: of('lung.functional-residual-capacity'),
    lungTissue: of('lung.tissue-and-blood'),
    circuitVolume: of('circuit.volume'),
    airOxygen: of('air.oxygen-fraction'),
    co2Rise: {
      intraperitoneal: of('pneumoperitoneum.intraperitoneal.co2-rise'),
      gynaecological: of('pneumoperitoneum.gynaecological.co2-rise'),
      extraperitoneal: of('pneumoperitoneum.extraperitoneal.co2-rise')
    },
    adultWeightLimit: set.constants.get('adult.weight-limit') ?? null,
    childResidualCapacity: set.constants.get('child.functional-residual-capacity') ?? null,
    insufflation: set.constants.has('insufflation.begins')
      ? {
          begins: of('insufflation.begins'),
          plateau: of('insufflation.plateau'),
          extraperitoneal: [...set.constants.values()]
            .filter(({ id }) => id.startsWith(risesAt))
            .map((rise) => ({ minute: Number(rise.id.slice(risesAt.length)), rise }))
            .sort((one, other) => one.minute - other.minute)
        }
      : null,
    leastSpilledShare: set.constants.get('measured-use.least-spilled-share') ?? null,
    obesity: set.constants.has('obesity.body-mass-index')
      ? {
          heightM: of('obesity.assumed-height'),
          bodyMassIndex: of('obesity.body-mass-index'),
          residualShare: of('obesity.residual-capacity-share'),
          numerator: of('lean-weight.numerator'),
          manOffset: of('lean-weight.man.offset'),
          manSlope: of('lean-weight.man.slope'),
          womanOffset: of('lean-weight.woman.offset'),
          womanSlope: of('lean-weight.woman.slope')
        }
      : null,
    nitrousOxide: set.constants.has('nitrous-oxide.drawn-in-share')
      ? {
          bloodGas: of('nitrous-oxide.blood-gas'),
          bodies: bodiesFor('nitrous-oxide'),
          drawnInShare: of('nitrous-oxide.drawn-in-share')
        }
      : null,
    groups: set.constants.has('mac-textbook.youngest')
      ? {
          label: { mac40: of('mac-label.sevoflurane.mac40'), slope: of('mac-label.sevoflurane.age-slope') },
          textbook: {
            youngest: of('mac-textbook.youngest'),
            oldest: of('mac-textbook.oldest'),
            mac: those('mac-textbook', [...agents, 'nitrous-oxide'])
          },
          patients: those('blood-gas-of-patients', agents)
        }
      : null,
    agents: {
      sevoflurane: agentOf('sevoflurane'),
      isoflurane: agentOf('isoflurane'),
      desflurane: agentOf('desflurane'),
      halothane: agentOf('halothane'),
      enflurane: agentOf('enflurane')
    }
  };
}

const picked = new WeakMap<ReferenceSet, CaseConstants>();

/**
 * The constants of a reference set that cases draw on.
 * @throws Error where the set lacks one: a programmer's mistake.
 */
export function caseConstants(given: ReferenceSet): CaseConstants {
  const set = given.casesAs ?? given;
  let constants = picked.get(set);
  if (constants === undefined) {
    constants = pick(set);
    picked.set(set, constants);
  }
  return constants;
}
