/**
 * One anaesthetic as a circle system: a circuit, a lung, and tissues in parallel, all well mixed.
 *
 *     U            = λ Q Σ q_k (F_A − P_k)                      agent that the blood carries off
 *     V_L  F_A'    = V_A (F_C − F_A) − U
 *     V_k s_k P_k' = q_k Q (F_A − P_k)
 *     spill        = max(L, F + v − VO2 − U)                    gas that leaves: relief valve, leak, unreturned sample
 *     V_C  F_C'    = v − V_A (F_C − F_A) − spill · F_S
 *
 * Gas leaves at F_S = e F_A + (1 − e) F_C, e = min(1 − d, V_A / spill): d is the share of it that leaves as inspired gas,
 * and no more expired gas leaves than is breathed out. With d = 1 it is the circuit's own gas, F_S = F_C. L is 0, but
 * for flow as needed: F is then the least flow, and where F + v − VO2 − U is below L, what is lost, the machine gives
 * VO2 + U + L − v instead.
 *
 * F_C, F_A, P_k are the agent's share of the gas in circuit and lung and its tension in each tissue, v the vapour flow.
 * The vaporiser is off (v = 0), sits at a dial D (v = F D / (1 − D)), or holds the end-tidal target F_T: the inspired
 * share that keeps F_A at F_T is F_need = F_T + λ Q Σ q_k (F_T − P_k) / V_A, and the circuit is led to it with the mixing
 * time τ and then follows it, F_C' = (F_need − F_C) / τ + F_need', as far as 0 ≤ v ≤ F D / (1 − D) allows. F_need falls
 * while the tissues fill, so without its own rate in the law the circuit would lag above it, and F_A above the target.
 *
 * So the system is smooth but for the moments at which the vaporiser meets a limit, gas begins or ceases to spill, or as
 * much leaves as is breathed out.
 * Where another gas is taken up beside the agent, its uptake W is given, steady over each of some spans of time. It leaves
 * that much less to spill, and in its place the lung draws in w more than V_A, which is what it breathes out:
 *
 *     V_L  F_A'    = V_A (F_C − F_A) + w F_C − U
 *     spill        = max(L, F + v − VO2 − W − U)
 *     V_C  F_C'    = v − V_A (F_C − F_A) − w F_C − spill · F_S
 *     F_need       = (V_A F_T + λ Q Σ q_k (F_T − P_k)) / (V_A + w)
 *
 * V_A is constant over a phase or changes evenly from its beginning to its end, as where CO2 elimination rises; F_need'
 * then has a part of V_A' as well. Between those moments it is solved by a stiffly accurate, L-stable Rosenbrock method of order 4 with an embedded one of order 3
 * (RODAS: Hairer & Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996, section IV.7), whose steps grow
 * from seconds to half an hour as the fast compartments settle; the moments themselves are located within the step and
 * the step is taken again up to there. The Jacobian is exact, and an arrow: every tissue hangs on the lung alone, so
 * each stage is a two-by-two system however many tissues there are.
 *
 * A Rosenbrock method with the exact Jacobian keeps linear invariants. Delivered and spilled vapour are integrated along
 * with the state, what was taken up is what lies in the tissues, and so
 * delivered = taken up + spilled + V_C F_C + V_L F_A closes to rounding: a check of the run, as nothing is had by
 * subtraction.
 */

/** A tissue that blood supplies. */
export interface Tissue {
  readonly volumeL: number;
  /** Partition coefficient tissue/blood. */
  readonly tissueBlood: number;
  /** Share of cardiac output, 0 to 1. The shares' sum may be below 1: the rest is a shunt. */
  readonly outputShare: number;
}

/** What becomes of another gas, L/min: steady until each of the minutes, from the one before or from 0; 0 after the last. */
export interface GasBeside {
  readonly untilMin: readonly number[];
  /** What comes in of it where the flow follows the need, on top of the phase's own flow; else it is part of that. */
  readonly givenLPerMin: readonly number[];
  readonly takenUpLPerMin: readonly number[];
  /** Gas that the lung draws in, in place of what it takes up. */
  readonly drawnInLPerMin: readonly number[];
}

export interface CirclePhase {
  readonly minutes: number;
  /** Carrier gas set on the flowmeters, L/min, above 0. */
  readonly flowLPerMin: number;
  /** At the beginning of the phase, where it differs from the case's own, as under insufflation. */
  readonly alveolarVentilationLPerMin?: number;
  /** At its end, where it changes evenly over the phase. */
  readonly endVentilationLPerMin?: number;
  /**
   * Flow as needed: what the circuit loses however little comes in, leak and unreturned sample, L/min. The flow is then
   * the least one, and what more the patient and the losses take is given from moment to moment.
   */
  readonly lostLPerMin?: number;
  readonly vaporiser: 'hold' | 'dial' | 'off';
  /** The setting with `dial`, the upper limit with `hold`: share of the mixture, 0 to below 1; 1 with `hold`: no limit. */
  readonly dialFraction: number;
}

export interface CircleCase {
  /** Partition coefficient blood/gas λ. */
  readonly bloodGas: number;
  readonly cardiacOutputLPerMin: number;
  readonly alveolarVentilationLPerMin: number;
  readonly oxygenUptakeLPerMin: number;
  /** Effective volume of the lung, its tissue and blood included. */
  readonly lungVolumeL: number;
  readonly circuitVolumeL: number;
  /** Share of the spilled gas that leaves as inspired gas, 0 to 1; 1 where left out. */
  readonly spillShareInspiredFraction?: number;
  readonly tissues: readonly Tissue[];
  /** End-tidal fraction to hold; also what "reached" is measured against. */
  readonly targetFraction: number;
  readonly phases: readonly CirclePhase[];
  /** Left out where no other gas is followed. */
  readonly beside?: GasBeside | undefined;
}

/** What a run gives; volumes are vapour, in litres. Written by `solveCircleSystem`, owned by the caller. */
export interface CircleOutcome {
  deliveredL: number;
  takenUpL: number;
  spilledL: number;
  leftInCircuitL: number;
  leftInLungL: number;
  /** Delivered − taken up − spilled − left: rounding only. */
  balanceErrorL: number;
  /** First time with F_A ≥ 0.95 F_T; NaN where that never comes, 0 where the target is 0. */
  minutesToTarget: number;
  /** Minutes with F_A < 0.95 F_T after it was reached. */
  minutesBelowTarget: number;
  /** Those of them in which the plan had the vaporiser off. */
  minutesBelowWhileOff: number;
  /** By phase, at its end: vapour delivered, vapour taken up, and the integral of F_A over time (min) so far. */
  readonly deliveredByPhaseL: Float64Array;
  readonly takenUpByPhaseL: Float64Array;
  readonly endTidalByPhaseMin: Float64Array;
  /** Fresh gas of each phase, L. */
  readonly freshGasByPhaseL: Float64Array;
  /** Steps taken, those repeated at a located switch point included. */
  steps: number;
  /** Steps thrown away because their error was above the tolerance. */
  rejected: number;
  /** Switch points located. */
  switches: number;
}

/** Receives the course of a run, a few points for each step, in order of time; a jump is two points at one time. */
export interface CourseSink {
  add(point: {
    minute: number;
    flowLPerMin: number;
    vapourLPerMin: number;
    inspiredFraction: number;
    endTidalFraction: number;
  }): void;
}

/** Receives, step by step and in order of time, what came in and what lies in the tissues by then, L. */
export type UptakeSink = (at: { minute: number; deliveredL: number; takenUpL: number }) => void;

/** Most phases, those of a plan cut where ventilation bends, and most tissues that a run takes. */
export const PHASE_LIMIT = 16;
const TISSUE_LIMIT = 12;

/** Time in which the circuit is led to the inspired share that is needed, min: a modelling choice. */
export const MIXING_TIME_MIN = 0.25;
/** Share of the target at which it counts as reached. */
export const REACHED_SHARE = 0.95;
/** Local error allowed per step: a share of the target for fractions, of the vapour delivered for volumes. */
export const STEP_TOLERANCE = 0.03;

export function emptyOutcome(): CircleOutcome {
  return {
    deliveredL: 0,
    takenUpL: 0,
    spilledL: 0,
    leftInCircuitL: 0,
    leftInLungL: 0,
    balanceErrorL: 0,
    minutesToTarget: NaN,
    minutesBelowTarget: 0,
    minutesBelowWhileOff: 0,
    deliveredByPhaseL: new Float64Array(PHASE_LIMIT),
    takenUpByPhaseL: new Float64Array(PHASE_LIMIT),
    endTidalByPhaseMin: new Float64Array(PHASE_LIMIT),
    freshGasByPhaseL: new Float64Array(PHASE_LIMIT),
    steps: 0,
    rejected: 0,
    switches: 0
  };
}

const STAGES = 6;

/**
 * The method's coefficients, row by row, in the form of Hairer & Wanner: stage s starts from the state y + Σ_j A_sj k_j and
 * has the right-hand side f + Σ_j C_sj k_j / h. The step ends at y + Σ_j A_6j k_j, and the last k is its error estimate.
 */
const GAMMA = 0.25;
// prettier-ignore
const A_ROWS = Float64Array.of(
  0, 0, 0, 0, 0, 0,
  1.544, 0, 0, 0, 0, 0,
  0.9466785280815826, 0.2557011698983284, 0, 0, 0, 0,
  3.314825187068521, 2.896124015972201, 0.9986419139977817, 0, 0, 0,
  1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 0, 0,
  1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 1, 0,
  1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 1, 1
);
// prettier-ignore
const C_ROWS = Float64Array.of(
  0, 0, 0, 0, 0, 0,
  -5.6688, 0, 0, 0, 0, 0,
  -2.430093356833875, -0.2063599157091915, 0, 0, 0, 0,
  -0.1073529058151375, -9.594562251023355, -20.47028614809616, 0, 0, 0,
  7.496443313967647, -10.24680431464352, -33.99990352819905, 11.7089089320616, 0, 0,
  8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054, 0
);

/**
 * Weights of the stages for a quantity that is only summed up over time, and so feeds back into nothing: its k are
 * γ h (I − γ C)⁻¹ q, q_s being its rate in stage s with the Jacobian's part, and so its change over a step is
 * h Σ_s SUM_WEIGHTS_s q_s and the error estimate h Σ_s ERROR_WEIGHTS_s q_s.
 */
const ERROR_WEIGHTS = weightsOf(Float64Array.of(0, 0, 0, 0, 0, 1));
const SUM_WEIGHTS = weightsOf(A_ROWS.slice(STAGES * STAGES));

/** γ (I − γ Cᵀ)⁻¹ m, by back substitution. */
function weightsOf(m: Float64Array): Float64Array {
  const weights = new Float64Array(STAGES);
  for (let s = STAGES - 1; s >= 0; s--) {
    let sum = m[s]!;
    for (let later = s + 1; later < STAGES; later++) sum += C_ROWS[later * STAGES + s]! * weights[later]!;
    weights[s] = GAMMA * sum;
  }
  return weights;
}

/**
 * The stages of a quantity that grows evenly with time, per step and per its growth over it: where it stands at each
 * stage, and the stage's k.
 */
const TIME_STAGES = new Float64Array(STAGES);
const TIME_NODES = new Float64Array(STAGES);
for (let s = 0; s < STAGES; s++) {
  let stage = 1;
  for (let t = 0; t < s; t++) {
    stage += C_ROWS[s * STAGES + t]! * TIME_STAGES[t]!;
    TIME_NODES[s]! += A_ROWS[s * STAGES + t]! * TIME_STAGES[t]!;
  }
  TIME_STAGES[s] = GAMMA * stage;
}

/** By how much stricter a step's error is held for volumes, which add up, than for fractions, which decay. */
const VOLUME_STRICTNESS = 3;
/** Minutes of uptake that are added to a volume before an error is held against it: early on it is next to nothing. */
const DELIVERED_BASE_MIN = 2;
const TAKEN_UP_BASE_MIN = 0.02;
const FIRST_STEP_MIN = 0.25;
const STEP_AFTER_SWITCH_MIN = 0.6;
/** A step this short is taken whatever its error: the state hardly changes. */
const SHORTEST_STEP_MIN = 1e-7;
const LARGEST_GROWTH = 10;
const SMALLEST_GROWTH = 0.15;
const SAFETY = 0.9;
/** How far beyond a switch point a step may end: so many minutes, and in a short phase no more than this share of it. */
const SWITCH_TOLERANCE_MIN = 0.04;
const SWITCH_TOLERANCE_SHARE = 0.01;
/** Share of that by which a step is led beyond the point, so that it ends behind it. */
const SWITCH_MARGIN_SHARE = 0.25;
const BISECTIONS = 14;
const POINTS_PER_STEP = 6;

/** A span of time shorter than this is taken with the next, min: it comes of rounding. */
const SHORTEST_SPAN_MIN = 1e-9;

type Solve = (
  given: CircleCase,
  out: CircleOutcome,
  course?: CourseSink | null,
  uptake?: UptakeSink | null
) => void;

/**
 * The solver with its room to work in. A closure that is made once, as the engine then takes the arrays for constants and
 * reaches them without a detour. In a bundle, where the constants of a module become variables, that saves a third of a
 * case's time.
 */
function makeSolver(): { solveCase: Solve; solveFloor: Solve } {
  // The method's table, taken into the closure for the same reason.
  const stages = STAGES;
  const aRows = A_ROWS;
  const cRows = C_ROWS;
  const sumWeights = SUM_WEIGHTS;
  const errorWeights = ERROR_WEIGHTS;
  const timeStages = TIME_STAGES;
  const timeNodes = TIME_NODES;

  // Places in a state: circuit, lung, then the tissues.
  const C = 0;
  const A = 1;
  const P = 2;
  const WIDTH = P + TISSUE_LIMIT;

  // Places among what is summed up: vapour delivered, vapour spilled, ∫F_A dt.
  const D = 0;
  const S = 1;
  const E = 2;

  // What the vaporiser does, whether more spills than at least does, and whether as much leaves as is breathed out.
  const SHUT = 0;
  const LIMITED = 1;
  const HOLDING = 2;
  const SPILLING = 1 << 2;
  const CAPPED = 1 << 3;

  const vector = () => new Float64Array(WIDTH);

  /**
   * The case and phase at hand, its state and the room to work in: one object that is written over, so that a run
   * allocates nothing. The functions below take out of it what they need first, which lets the engine keep that at hand.
   */
  const system = {
    width: P,
    /** At the minute at hand, L/min, and how it changes, L/min². */
    ventilation: 0,
    ventilationRate: 0,
    /** Drawn into the lung beyond what it breathes out, L/min. */
    drawn: 0,
    lung: 0,
    circuit: 0,
    /** Taken from the circuit's gas by the patient, the agent aside: oxygen, and another gas where one is given, L/min. */
    oxygen: 0,
    /** λ Q q_k: blood flow to each tissue as the gas volume that it can carry, L/min; and their sum. */
    carry: vector(),
    carrySum: 0,
    /** Σ λ Q q_k / time constant: the rate of the blood's return as the lung is above the tissues, L/min². */
    fillSum: 0,
    /** 1 / time constant of each tissue, 1/min. */
    turnover: vector(),
    /** λ s_k V_k: gas volume that a tissue holds at a tension of 1, L; 0 for circuit and lung. */
    capacity: vector(),
    target: 0,

    flow: 0,
    /** What spills at least, L/min: 0 but for flow as needed. */
    leastSpill: 0,
    isAsNeeded: false,
    /** Fresh gas of a phase of flow as needed so far, L. */
    freshGas: 0,
    /** Share of the spill that is expired gas, as long as no more leaves than is breathed out. */
    expiredShare: 0,
    /** Vapour flow at the dial's setting or limit, L/min. */
    limit: 0,
    holds: false,
    /** The floor's run: nothing spills and no limit acts. */
    ideal: false,
    regime: SHUT,
    /** The regime found behind a switch point. */
    regimeAfter: SHUT,

    minute: 0,
    /** The step that the controller would like next, min. */
    nextStep: 0,
    /** State and its rate at both ends of a step, and what is summed up until then. */
    y: vector(),
    yNew: vector(),
    rate: vector(),
    rateNew: vector(),
    sums: new Float64Array(3),
    sumsNew: new Float64Array(3),
    sumsError: new Float64Array(3),
    /** A stage's state and right-hand side, 1 / (1/(γh) + turnover), and the stages' k, `stages` to a place of the state. */
    z: vector(),
    r: vector(),
    inverse: vector(),
    /** How F_C' depends on each tissue's tension, 1/min. */
    pull: vector(),
    k: new Float64Array(WIDTH * stages)
  };

  /** Σ λ Q q_k x_k over the tissues of a state or of its rate. */
  function carried(x: Float64Array): number {
    const { width, carry } = system;
    let sum = 0;
    for (let i = P; i < width; i++) sum += carry[i]! * x[i]!;
    return sum;
  }

  /**
   * F_C' that holds the target, `back` being what the blood brings back, B = Σ λ Q q_k P_k, and `backRate` B'. As
   * F_need = F_T + N / (V_A + w) with N = λ Q Σ q_k F_T − B − w F_T, its rate is −B' / (V_A + w) − N V_A' / (V_A + w)².
   */
  function holdingRate(circuit: number, back: number, backRate: number, ventilation: number): number {
    const { target, carrySum, ventilationRate, drawn } = system;
    const net = carrySum * target - drawn * target - back;
    const inhaled = ventilation + drawn;
    return (
      (target + net / inhaled - circuit) / MIXING_TIME_MIN -
      backRate / inhaled -
      (net * ventilationRate) / (inhaled * inhaled)
    );
  }

  /** The regime that belongs to a state. */
  function regimeAt(
    circuit: number,
    lung: number,
    back: number,
    backRate: number,
    ventilation: number
  ): number {
    if (system.ideal) return HOLDING;
    const { leastSpill, expiredShare } = system;
    const gas = system.flow - system.oxygen - system.carrySum * lung + back;
    if (system.holds) {
      const mixing =
        system.circuit * holdingRate(circuit, back, backRate, ventilation) + system.drawn * circuit;
      const net = ventilation * (circuit - lung) + mixing;
      const spilt = expiredShare * lung + (1 - expiredShare) * circuit;
      let regime = HOLDING;
      let isSpilling = net + gas > leastSpill * (1 - spilt);
      let vapour = isSpilling ? (net + gas * spilt) / (1 - spilt) : net + leastSpill * spilt;
      if (expiredShare * (isSpilling ? gas + vapour : leastSpill) > ventilation) {
        regime += CAPPED;
        isSpilling = mixing + gas > leastSpill * (1 - circuit);
        vapour = isSpilling ? (mixing + gas * circuit) / (1 - circuit) : mixing + leastSpill * circuit;
      }
      if (vapour < system.limit) {
        if (vapour > 0) return isSpilling ? regime + SPILLING : regime;
        return SHUT + spillOf(gas, ventilation);
      }
    }
    return LIMITED + spillOf(gas + system.limit, ventilation);
  }

  /** What of a regime is about the spill, `surplus` being what comes in beyond what the patient takes, L/min. */
  function spillOf(surplus: number, ventilation: number): number {
    const { leastSpill, expiredShare } = system;
    const isSpilling = surplus > leastSpill;
    const isCapped = expiredShare * (isSpilling ? surplus : leastSpill) > ventilation;
    return (isSpilling ? SPILLING : 0) + (isCapped ? CAPPED : 0);
  }

  /** Vapour flow in the present regime, L/min, for the course: between two points of a step it keeps to the dial's limits. */
  function vapourAt(
    circuit: number,
    lung: number,
    back: number,
    backRate: number,
    ventilation: number
  ): number {
    const { regime, limit, carrySum, leastSpill } = system;
    if ((regime & HOLDING) === 0) return (regime & LIMITED) === 0 ? 0 : limit;
    const isCapped = (regime & CAPPED) !== 0;
    const expired = isCapped ? 0 : system.expiredShare;
    const spilt = expired * lung + (1 - expired) * circuit;
    const net =
      (isCapped ? 0 : ventilation) * (circuit - lung) +
      system.drawn * circuit +
      system.circuit * holdingRate(circuit, back, backRate, ventilation);
    const gas = system.flow - system.oxygen - carrySum * lung + back;
    const vapour = (regime & SPILLING) === 0 ? net + leastSpill * spilt : (net + gas * spilt) / (1 - spilt);
    return Math.min(limit, Math.max(0, vapour));
  }

  /** dx/dt of a state, breathed by a ventilation, in the present regime. */
  function rates(x: Float64Array, ventilation: number, out: Float64Array): void {
    const { width, carry, turnover } = system;
    const circuit = x[C]!;
    const lung = x[A]!;
    let back = 0;
    let backRate = 0;
    for (let i = P; i < width; i++) {
      const filling = turnover[i]! * (lung - x[i]!);
      back += carry[i]! * x[i]!;
      backRate += carry[i]! * filling;
      out[i] = filling;
    }
    const uptake = system.carrySum * lung - back;
    const breathed = ventilation * (circuit - lung);
    const drawnIn = system.drawn * circuit;
    out[A] = (breathed + drawnIn - uptake) / system.lung;
    if ((system.regime & HOLDING) !== 0) out[C] = holdingRate(circuit, back, backRate, ventilation);
    else {
      const vapour = (system.regime & LIMITED) !== 0 ? system.limit : 0;
      const isCapped = (system.regime & CAPPED) !== 0;
      const expired = isCapped ? 0 : system.expiredShare;
      const leaving =
        (system.regime & SPILLING) !== 0 ? system.flow + vapour - system.oxygen - uptake : system.leastSpill;
      const mixed = leaving * (expired * lung + (1 - expired) * circuit);
      out[C] = (vapour - breathed - drawnIn - (isCapped ? mixed - breathed : mixed)) / system.circuit;
    }
  }

  /** How F_C' of the state at hand changes with time while the target is held and ventilation changes, 1/min². */
  function holdingByTime(): number {
    const { y, width, carry, turnover, target, carrySum, ventilation, ventilationRate, drawn } = system;
    const inhaled = ventilation + drawn;
    let backRate = 0;
    for (let i = P; i < width; i++) backRate += carry[i]! * turnover[i]! * (y[A]! - y[i]!);
    const need = (carrySum * target - drawn * target - carried(y)) / inhaled;
    const growth = ventilationRate / inhaled;
    return growth * (2 * need * growth + backRate / inhaled - need / MIXING_TIME_MIN);
  }

  /**
   * One step of length h from y to yNew and from sums to sumsNew; the error estimate is left in the last k and sumsError.
   *
   * Each stage solves (1/(γh) − J) k = right-hand side, J being the Jacobian at y. A tissue's row has the lung and itself
   * alone, so it is eliminated; the lung knows the tissues only through the blood's return B = Σ λ Q q_k P_k, and the
   * circuit through Σ pull_k P_k. What vapour and spill depend on is C, A, B and, while holding, the circuit's rate R.
   * Where ventilation changes, each stage has its own, and what depends on time has its part of the right-hand side.
   */
  function step(h: number): void {
    const { width, ventilation, ventilationRate, drawn, lung, circuit, oxygen } = system;
    const { carry, carrySum, fillSum, turnover } = system;
    const { target, flow, limit, leastSpill } = system;
    const { y, yNew, rate, sums, sumsNew, sumsError, z, r, inverse, pull, k } = system;
    const holding = (system.regime & HOLDING) !== 0;
    const spilling = (system.regime & SPILLING) !== 0;
    const capped = (system.regime & CAPPED) !== 0;
    // Capped, what is breathed out leaves as it is and the rest as circuit gas: spill · F_S = spill · F_C − V_A (F_C − F_A).
    const expired = capped ? 0 : system.expiredShare;
    const inspired = 1 - expired;
    const breathing = capped ? 0 : ventilation;
    const fixedVapour = (system.regime & LIMITED) !== 0 ? limit : 0;
    const perH = 1 / h;
    const inhaled = ventilation + drawn;
    const perInhaled = 1 / inhaled;
    /** What the blood would carry off at the target with nothing in the tissues, less what is drawn in at the target. */
    const carriedAtTarget = carrySum * target - drawn * target;
    const perLung = 1 / lung;
    const perCircuit = 1 / circuit;
    const perMixing = 1 / MIXING_TIME_MIN;
    const sigma = perH / GAMMA;

    // The Jacobian.
    const gas = flow - oxygen - carrySum * y[A]! + carried(y);
    const spilt = expired * y[A]! + inspired * y[C]!;
    let circuitByC: number, circuitByA: number;
    // A tissue's pull is its carry times this.
    let pullPerCarry: number, pullPerFill: number;
    let vapourByC = 0;
    let vapourByA = 0;
    let vapourByB = 0;
    let vapourByR = 0;
    let spilledByC: number;
    let spilledByA: number;
    let spilledByB = 0;
    let spilledByR = 0;
    // By time, through ventilation alone.
    const changes = ventilationRate !== 0;
    let ventilated = ventilation;
    let perVentilated = perInhaled;
    let circuitByTime = 0;
    let lungByTime = 0;
    let vapourByTime = 0;
    let spilledByTime = 0;
    if (holding) {
      circuitByC = -perMixing;
      circuitByA = -fillSum * perInhaled;
      pullPerCarry = -perMixing * perInhaled;
      pullPerFill = perInhaled;
      if (spilling) {
        const rest = 1 / (1 - spilt);
        const net = breathing * (y[C]! - y[A]!) + circuit * rate[C]! + drawn * y[C]!;
        const more = (net + gas * spilt) * rest;
        vapourByC = (breathing + drawn + inspired * gas + inspired * more) * rest;
        vapourByA = (-breathing - carrySum * spilt + expired * (gas + more)) * rest;
        vapourByB = spilt * rest;
        vapourByR = circuit * rest;
      } else {
        vapourByC = breathing + drawn + inspired * leastSpill;
        vapourByA = expired * leastSpill - breathing;
        vapourByR = circuit;
      }
      spilledByC = vapourByC - inhaled;
      spilledByA = vapourByA + ventilation;
      spilledByB = vapourByB;
      spilledByR = vapourByR - circuit;
    } else {
      const leaving = spilling ? gas + fixedVapour : leastSpill;
      spilledByC = inspired * leaving;
      spilledByA = expired * leaving;
      if (spilling) {
        spilledByA -= carrySum * spilt;
        spilledByB = spilt;
      }
      if (capped) {
        spilledByC -= ventilation;
        spilledByA += ventilation;
      }
      circuitByC = -(inhaled + spilledByC) * perCircuit;
      circuitByA = (ventilation - spilledByA) * perCircuit;
      pullPerCarry = -spilledByB * perCircuit;
      pullPerFill = 0;
    }
    if (changes) {
      const breathed = ventilationRate * (y[C]! - y[A]!);
      lungByTime = breathed * perLung;
      if (holding) {
        pullPerCarry += ventilationRate * perInhaled * perInhaled;
        circuitByTime = holdingByTime();
        vapourByTime = capped ? 0 : spilling ? breathed / (1 - spilt) : breathed;
        spilledByTime = vapourByTime - breathed;
      } else {
        spilledByTime = capped ? -breathed : 0;
        circuitByTime = -(breathed + spilledByTime) * perCircuit;
      }
    }
    let backPerLung = 0;
    let pullPerLung = 0;
    for (let i = P; i < width; i++) {
      const inv = 1 / (sigma + turnover[i]!);
      const perLungRise = turnover[i]! * inv;
      inverse[i] = inv;
      pull[i] = carry[i]! * (pullPerCarry + pullPerFill * turnover[i]!);
      backPerLung += carry[i]! * perLungRise;
      pullPerLung += pull[i]! * perLungRise;
    }
    const m11 = sigma - circuitByC;
    const m12 = -(circuitByA + pullPerLung);
    const m21 = -inhaled / lung;
    const m22 = sigma + (ventilation + carrySum) / lung - perLung * backPerLung;
    const perDeterminant = 1 / (m11 * m22 - m12 * m21);

    let delivered = 0;
    let spilled = 0;
    let endTidal = 0;
    let deliveredError = 0;
    let spilledError = 0;
    for (let s = 0; s < stages; s++) {
      const row = s * stages;
      for (let i = 0; i < width; i++) {
        let state = y[i]!;
        let right = 0;
        for (let t = 0; t < s; t++) {
          const earlier = k[i * stages + t]!;
          state += aRows[row + t]! * earlier;
          right += cRows[row + t]! * earlier;
        }
        z[i] = state;
        r[i] = right * perH;
      }
      // The right-hand side at the stage's state, and the tissues' part of the elimination.
      const c = z[C]!;
      const a = z[A]!;
      let b = 0;
      let bRate = 0;
      let backOfRight = 0;
      let pullOfRight = 0;
      for (let i = P; i < width; i++) {
        const filling = turnover[i]! * (a - z[i]!);
        const right = r[i]! + filling;
        r[i] = right;
        b += carry[i]! * z[i]!;
        bRate += carry[i]! * filling;
        backOfRight += carry[i]! * inverse[i]! * right;
        pullOfRight += pull[i]! * inverse[i]! * right;
      }
      if (changes) {
        ventilated = ventilation + timeNodes[s]! * h * ventilationRate;
        perVentilated = 1 / (ventilated + drawn);
      }
      const uptake = carrySum * a - b;
      const exchanged = ventilated * (c - a);
      const drawnIn = drawn * c;
      const breathed = exchanged + drawnIn;
      const leavingAt = expired * a + inspired * c;
      let vapour: number, spill: number, toCircuit: number;
      if (holding) {
        const need = (carriedAtTarget - b) * perVentilated;
        toCircuit = (target + need - c) * perMixing - bRate * perVentilated;
        if (changes) toCircuit -= need * ventilationRate * perVentilated;
        const mixing = circuit * toCircuit;
        const net = breathed + mixing;
        const wanted = capped ? mixing + drawnIn : net;
        vapour = spilling
          ? (wanted + (flow - oxygen - uptake) * leavingAt) / (1 - leavingAt)
          : wanted + leastSpill * leavingAt;
        spill = vapour - net;
      } else {
        vapour = fixedVapour;
        spill = (spilling ? flow + vapour - oxygen - uptake : leastSpill) * leavingAt;
        if (capped) spill -= exchanged;
        toCircuit = (vapour - breathed - spill) * perCircuit;
      }
      if (changes) {
        const kTime = timeStages[s]! * h;
        vapour += vapourByTime * kTime;
        spill += spilledByTime * kTime;
        pullOfRight += circuitByTime * kTime;
        r[A]! += lungByTime * kTime;
      }
      const rightC = r[C]! + toCircuit + pullOfRight;
      const rightA = r[A]! + (breathed - uptake) * perLung + perLung * backOfRight;
      const kC = (m22 * rightC - m12 * rightA) * perDeterminant;
      const kA = (m11 * rightA - m21 * rightC) * perDeterminant;
      const kB = backOfRight + backPerLung * kA;
      const kR = circuitByC * kC + circuitByA * kA + pullOfRight + pullPerLung * kA;
      k[C * stages + s] = kC;
      k[A * stages + s] = kA;
      for (let i = P; i < width; i++) k[i * stages + s] = (r[i]! + turnover[i]! * kA) * inverse[i]!;
      const rateD = vapour + vapourByC * kC + vapourByA * kA + vapourByB * kB + vapourByR * kR;
      const rateS = spill + spilledByC * kC + spilledByA * kA + spilledByB * kB + spilledByR * kR;
      delivered += sumWeights[s]! * rateD;
      spilled += sumWeights[s]! * rateS;
      endTidal += sumWeights[s]! * (a + kA);
      deliveredError += errorWeights[s]! * rateD;
      spilledError += errorWeights[s]! * rateS;
    }
    const last = stages - 1;
    for (let i = 0; i < width; i++) yNew[i] = z[i]! + k[i * stages + last]!;
    sumsNew[D] = sums[D]! + h * delivered;
    sumsNew[S] = sums[S]! + h * spilled;
    sumsNew[E] = sums[E]! + h * endTidal;
    sumsError[D] = h * deliveredError;
    sumsError[S] = h * spilledError;
  }

  /** The cubic through both ends of a step with their slopes, at the share θ of the step. */
  function hermite(
    from: number,
    slopeFrom: number,
    to: number,
    slopeTo: number,
    h: number,
    theta: number
  ): number {
    const rest = 1 - theta;
    return (
      rest * rest * ((1 + 2 * theta) * from + theta * h * slopeFrom) +
      theta * theta * ((3 - 2 * theta) * to - rest * h * slopeTo)
    );
  }

  /** Largest error of the step just tried, as a multiple of what is allowed. */
  function stepError(scale: number): number {
    const { width, k, yNew, sumsNew, sumsError, capacity, carrySum } = system;
    let ofFractions = 0;
    let takenUp = 0;
    let ofTakenUp = 0;
    for (let i = 0; i < width; i++) {
      const error = k[i * stages + stages - 1]!;
      ofFractions = Math.max(ofFractions, Math.abs(error));
      takenUp += capacity[i]! * yNew[i]!;
      ofTakenUp += capacity[i]! * error;
    }
    const ofSums = Math.max(Math.abs(sumsError[D]!), Math.abs(sumsError[S]!));
    const uptake = scale * carrySum;
    const forSums = VOLUME_STRICTNESS / STEP_TOLERANCE;
    return Math.max(
      ofFractions / (STEP_TOLERANCE * scale),
      (forSums * ofSums) / (sumsNew[D]! + DELIVERED_BASE_MIN * uptake),
      // Without tissues nothing is taken up.
      uptake === 0 ? 0 : (forSums * Math.abs(ofTakenUp)) / (takenUp + TAKEN_UP_BASE_MIN * uptake)
    );
  }

  /**
   * Share of the step from y to yNew after which another regime holds, to 2^-BISECTIONS from above; the regime there is
   * left in `system.regimeAfter`. 1 where the regime at the end is the present one, or where it did not hold at the start
   * either (a point located just short of the switch).
   */
  function switchShare(h: number): number {
    const { y, yNew, rate, rateNew, ventilation, ventilationRate } = system;
    const backFrom = carried(y);
    const backTo = carried(yNew);
    const slopeFrom = carried(rate);
    const slopeTo = carried(rateNew);
    system.regimeAfter = regimeAt(yNew[C]!, yNew[A]!, backTo, slopeTo, ventilation + h * ventilationRate);
    if (
      system.regimeAfter === system.regime ||
      regimeAt(y[C]!, y[A]!, backFrom, slopeFrom, ventilation) !== system.regime
    )
      return 1;
    let low = 0;
    let high = 1;
    for (let i = 0; i < BISECTIONS; i++) {
      const middle = (low + high) / 2;
      const regime = regimeAt(
        hermite(y[C]!, rate[C]!, yNew[C]!, rateNew[C]!, h, middle),
        hermite(y[A]!, rate[A]!, yNew[A]!, rateNew[A]!, h, middle),
        hermite(backFrom, slopeFrom, backTo, slopeTo, h, middle),
        slopeFrom + middle * (slopeTo - slopeFrom),
        ventilation + middle * h * ventilationRate
      );
      if (regime === system.regime) low = middle;
      else {
        high = middle;
        system.regimeAfter = regime;
      }
    }
    return high;
  }

  /** Share of the step at which F_A crosses the level. */
  function crossingShare(h: number, level: number): number {
    const { y, yNew, rate, rateNew } = system;
    const above = y[A]! >= level;
    let low = 0;
    let high = 1;
    for (let i = 0; i < BISECTIONS; i++) {
      const middle = (low + high) / 2;
      if (hermite(y[A]!, rate[A]!, yNew[A]!, rateNew[A]!, h, middle) >= level === above) low = middle;
      else high = middle;
    }
    return high;
  }

  /** Keeps account of when the target was reached, and of the minutes below it afterwards. */
  function watchTarget(h: number, vaporiserOff: boolean, out: CircleOutcome): void {
    const { y, yNew } = system;
    const level = REACHED_SHARE * system.target;
    const from = y[A]!;
    const to = yNew[A]!;
    let below = 0;
    if (Number.isNaN(out.minutesToTarget)) {
      if (to >= level)
        out.minutesToTarget = system.minute + h * (from >= level ? 0 : crossingShare(h, level));
    } else if (from < level && to < level) below = h;
    else if (from < level) below = h * crossingShare(h, level);
    else if (to < level) below = h * (1 - crossingShare(h, level));
    out.minutesBelowTarget += below;
    if (vaporiserOff) out.minutesBelowWhileOff += below;
  }

  /** Tells the course of the step from y to yNew in the regime that it was taken in. */
  function tellCourse(h: number, course: CourseSink): void {
    const { y, yNew, rate, rateNew } = system;
    const backFrom = carried(y);
    const backTo = carried(yNew);
    const slopeFrom = carried(rate);
    const slopeTo = carried(rateNew);
    for (let i = 0; i <= POINTS_PER_STEP; i++) {
      const theta = i / POINTS_PER_STEP;
      const inspiredFraction = hermite(y[C]!, rate[C]!, yNew[C]!, rateNew[C]!, h, theta);
      const endTidalFraction = hermite(y[A]!, rate[A]!, yNew[A]!, rateNew[A]!, h, theta);
      const back = hermite(backFrom, slopeFrom, backTo, slopeTo, h, theta);
      const vapourLPerMin = vapourAt(
        inspiredFraction,
        endTidalFraction,
        back,
        slopeFrom + theta * (slopeTo - slopeFrom),
        system.ventilation + theta * h * system.ventilationRate
      );
      const uptake = system.carrySum * endTidalFraction - back;
      course.add({
        minute: system.minute + theta * h,
        flowLPerMin:
          system.isAsNeeded && (system.regime & SPILLING) === 0
            ? Math.max(system.flow, system.oxygen + uptake + system.leastSpill - vapourLPerMin)
            : system.flow,
        vapourLPerMin,
        inspiredFraction,
        endTidalFraction
      });
    }
  }

  /** Runs one phase from the state y at system.minute; one that is continued differs from the last in its bend alone. */
  function runPhase(
    minutes: number,
    scale: number,
    vaporiserOff: boolean,
    isContinued: boolean,
    out: CircleOutcome,
    course: CourseSink | null,
    uptake: UptakeSink | null
  ): void {
    const { y, yNew, rate, rateNew, sums, sumsNew } = system;
    // The tissues' rates, and so the regime, hang on the state alone; the circuit's hangs on the regime.
    rates(y, system.ventilation, rate);
    system.regime = regimeAt(y[C]!, y[A]!, carried(y), carried(rate), system.ventilation);
    rates(y, system.ventilation, rate);
    if (!isContinued) system.nextStep = Math.min(system.nextStep, STEP_AFTER_SWITCH_MIN);
    const tolerance = Math.min(SWITCH_TOLERANCE_MIN, SWITCH_TOLERANCE_SHARE * minutes);
    const margin = SWITCH_MARGIN_SHARE * tolerance;
    let done = 0;
    while (done < minutes) {
      const remaining = minutes - done;
      let last = system.nextStep >= remaining;
      let h = last ? remaining : system.nextStep;
      step(h);
      out.steps++;
      const error = stepError(scale);
      const factor = Math.min(
        LARGEST_GROWTH,
        Math.max(SMALLEST_GROWTH, SAFETY / Math.sqrt(Math.sqrt(error)))
      );
      if (error > 1 && h > SHORTEST_STEP_MIN) {
        out.rejected++;
        system.nextStep = h * factor;
        continue;
      }
      if (!last) system.nextStep = h * factor;
      rates(yNew, system.ventilation + h * system.ventilationRate, rateNew);
      let share = switchShare(h);
      if (share < 1) {
        out.switches++;
        last = false;
        // The cubic is rough over a long step: the switch is looked for again in the shortened one, until it stays put.
        do {
          h = Math.min(h, h * share + margin);
          step(h);
          out.steps++;
          rates(yNew, system.ventilation + h * system.ventilationRate, rateNew);
          share = switchShare(h);
        } while ((1 - share) * h > tolerance);
        system.nextStep = Math.min(system.nextStep, STEP_AFTER_SWITCH_MIN);
      }
      watchTarget(h, vaporiserOff, out);
      if (course !== null) tellCourse(h, course);
      if (system.isAsNeeded)
        system.freshGas +=
          (system.regime & SPILLING) !== 0
            ? system.flow * h
            : (system.oxygen + system.leastSpill) * h -
              (sumsNew[D]! - sums[D]!) +
              (inTissues(yNew) - inTissues(y));
      y.set(yNew);
      sums.set(sumsNew);
      system.minute += h;
      system.ventilation += h * system.ventilationRate;
      if (uptake !== null) uptake({ minute: system.minute, deliveredL: sums[D]!, takenUpL: inTissues(y) });
      done = last ? minutes : done + h;
      if (system.regimeAfter === system.regime) rate.set(rateNew);
      else {
        system.regime = system.regimeAfter;
        rates(y, system.ventilation, rate);
      }
    }
  }

  /** Runs one phase, in one go or span by span of what is taken up beside the agent. */
  function runSpans(
    given: CircleCase,
    minutes: number,
    scale: number,
    vaporiserOff: boolean,
    isContinued: boolean,
    out: CircleOutcome,
    course: CourseSink | null,
    uptake: UptakeSink | null
  ): void {
    const { beside } = given;
    if (beside === undefined) {
      runPhase(minutes, scale, vaporiserOff, isContinued, out, course, uptake);
      return;
    }
    const { flow } = system;
    const end = system.minute + minutes;
    let isGoingOn = isContinued;
    for (let i = 0; system.minute < end - SHORTEST_SPAN_MIN; i++) {
      const until = Math.min(beside.untilMin[i] ?? end, end);
      const span = until > end - SHORTEST_SPAN_MIN ? end - system.minute : until - system.minute;
      if (span <= SHORTEST_SPAN_MIN) continue;
      system.oxygen = given.oxygenUptakeLPerMin + (beside.takenUpLPerMin[i] ?? 0);
      system.drawn = beside.drawnInLPerMin[i] ?? 0;
      system.flow = system.isAsNeeded ? flow + (beside.givenLPerMin[i] ?? 0) : flow;
      runPhase(span, scale, vaporiserOff, isGoingOn, out, course, uptake);
      isGoingOn = true;
    }
  }

  /** Puts the patient and the machine in place, with no agent anywhere. */
  function begin(given: CircleCase): void {
    const { carry, turnover, capacity } = system;
    const { tissues, bloodGas, cardiacOutputLPerMin } = given;
    if (tissues.length > TISSUE_LIMIT)
      throw new RangeError(`A body of ${tissues.length} tissues: at most ${TISSUE_LIMIT} are provided for.`);
    system.width = P + tissues.length;
    system.lung = given.lungVolumeL;
    system.circuit = given.circuitVolumeL;
    system.oxygen = given.oxygenUptakeLPerMin;
    system.drawn = 0;
    system.target = given.targetFraction;
    system.expiredShare = 1 - (given.spillShareInspiredFraction ?? 1);
    system.leastSpill = 0;
    system.isAsNeeded = false;
    let carrySum = 0;
    let fillSum = 0;
    for (let i = 0; i < tissues.length; i++) {
      const { volumeL, tissueBlood, outputShare } = tissues[i]!;
      carry[P + i] = bloodGas * cardiacOutputLPerMin * outputShare;
      capacity[P + i] = bloodGas * tissueBlood * volumeL;
      turnover[P + i] = (outputShare * cardiacOutputLPerMin) / (volumeL * tissueBlood);
      carrySum += carry[P + i]!;
      fillSum += carry[P + i]! * turnover[P + i]!;
    }
    system.carrySum = carrySum;
    system.fillSum = fillSum;
    system.minute = 0;
    system.nextStep = FIRST_STEP_MIN;
    system.y.fill(0);
    system.sums.fill(0);
  }

  /** What lies in the tissues of a state, L vapour: Σ λ s_k V_k P_k. */
  function inTissues(state: Float64Array): number {
    const { width, capacity } = system;
    let sum = 0;
    for (let i = P; i < width; i++) sum += capacity[i]! * state[i]!;
    return sum;
  }

  function clear(out: CircleOutcome): void {
    out.minutesToTarget = NaN;
    out.minutesBelowTarget = 0;
    out.minutesBelowWhileOff = 0;
    out.steps = 0;
    out.rejected = 0;
    out.switches = 0;
  }

  /** Writes the volumes at the end of a run. */
  function conclude(out: CircleOutcome): void {
    const { y, sums } = system;
    out.deliveredL = sums[D]!;
    out.takenUpL = inTissues(y);
    out.spilledL = sums[S]!;
    out.leftInCircuitL = system.circuit * y[C]!;
    out.leftInLungL = system.lung * y[A]!;
    out.balanceErrorL = out.deliveredL - out.takenUpL - out.spilledL - out.leftInCircuitL - out.leftInLungL;
  }

  /** Sets how the patient breathes in a phase. */
  function breathe(given: CircleCase, phase: CirclePhase): void {
    const { alveolarVentilationLPerMin: from = given.alveolarVentilationLPerMin, minutes } = phase;
    const { endVentilationLPerMin: until = from } = phase;
    system.ventilation = from;
    system.ventilationRate = (until - from) / minutes;
  }

  /** Whether a phase goes on as the one before it but for a bend of ventilation. */
  function isContinued(phases: readonly CirclePhase[], i: number): boolean {
    const before = phases[i - 1];
    if (before === undefined) return false;
    const phase = phases[i]!;
    const changes = (of: CirclePhase) => of.endVentilationLPerMin !== of.alveolarVentilationLPerMin;
    return (
      (changes(before) || changes(phase)) &&
      before.endVentilationLPerMin === phase.alveolarVentilationLPerMin &&
      before.flowLPerMin === phase.flowLPerMin &&
      before.lostLPerMin === phase.lostLPerMin &&
      before.vaporiser === phase.vaporiser &&
      before.dialFraction === phase.dialFraction
    );
  }

  function solveCase(
    given: CircleCase,
    out: CircleOutcome,
    course: CourseSink | null = null,
    uptake: UptakeSink | null = null
  ): void {
    const { sums } = system;
    const { phases } = given;
    if (phases.length > PHASE_LIMIT)
      throw new RangeError(`A plan of ${phases.length} phases: at most ${PHASE_LIMIT} are provided for.`);
    begin(given);
    clear(out);
    system.ideal = false;
    if (given.targetFraction === 0) out.minutesToTarget = 0;
    let scale = given.targetFraction;
    for (const { vaporiser, dialFraction } of phases)
      if (vaporiser === 'dial' && dialFraction > scale) scale = dialFraction;
    for (let i = 0; i < phases.length; i++) {
      const { minutes, flowLPerMin, lostLPerMin, vaporiser, dialFraction } = phases[i]!;
      system.flow = flowLPerMin;
      system.isAsNeeded = lostLPerMin !== undefined;
      system.leastSpill = lostLPerMin ?? 0;
      system.freshGas = 0;
      breathe(given, phases[i]!);
      system.holds = vaporiser === 'hold';
      system.limit = vaporiser === 'off' ? 0 : (flowLPerMin * dialFraction) / (1 - dialFraction);
      // Without agent anywhere there is nothing to solve: a target of 0 and no fixed dial.
      if (scale > 0)
        runSpans(given, minutes, scale, vaporiser === 'off', isContinued(phases, i), out, course, uptake);
      out.deliveredByPhaseL[i] = sums[D]!;
      out.takenUpByPhaseL[i] = inTissues(system.y);
      out.endTidalByPhaseMin[i] = sums[E]!;
      // Without agent, flow as needed is the patient's oxygen and the losses.
      if (system.isAsNeeded && scale === 0)
        system.freshGas = Math.max(flowLPerMin, system.oxygen + system.leastSpill) * minutes;
      out.freshGasByPhaseL[i] = system.isAsNeeded ? system.freshGas : flowLPerMin * minutes;
    }
    conclude(out);
  }

  /** Whether two phases have one ventilation, and that does not change. */
  function isBreathedAlike(given: CircleCase, one: CirclePhase, other: CirclePhase): boolean {
    const { alveolarVentilationLPerMin: ofCase } = given;
    const { alveolarVentilationLPerMin: first = ofCase, endVentilationLPerMin: firstEnd = first } = one;
    const { alveolarVentilationLPerMin: second = ofCase, endVentilationLPerMin: secondEnd = second } = other;
    return first === firstEnd && second === secondEnd && first === second;
  }

  function solveFloor(given: CircleCase, out: CircleOutcome): void {
    begin(given);
    clear(out);
    system.ideal = true;
    // Phases that are breathed alike are one: a floor knows no flow.
    let minutes = 0;
    for (let i = 0; i < given.phases.length && given.targetFraction > 0; i++) {
      const phase = given.phases[i]!;
      const next = given.phases[i + 1];
      minutes += phase.minutes;
      if (next !== undefined && isBreathedAlike(given, phase, next)) continue;
      breathe(given, phase);
      runSpans(given, minutes, given.targetFraction, false, false, out, null, null);
      minutes = 0;
    }
    conclude(out);
  }

  return { solveCase, solveFloor };
}

const solver = makeSolver();

/**
 * Solves one case and writes what became of the vapour into `out`.
 *
 * The case is taken as valid: flows, volumes and ventilation above 0, dial fractions from 0 to below 1 (1 with `hold`: no
 * limit), oxygen uptake at most the flow, shares from 0 to 1, at most `PHASE_LIMIT` phases and 12 tissues. `course` receives the course of the same run and
 * `uptake` what its tissues hold; with or without them the outcome has the same bits. Volumes are within 0.2 %, mostly within 0.01 %, of a general-purpose
 * library's solution at tolerance 1e-9.
 * @throws RangeError for more phases or tissues than provided for.
 */
export const solveCircleSystem: Solve = solver.solveCase;

/**
 * The floor, L vapour: what a circuit that spills nothing takes to hold the target from the first minute to the last,
 * with a vaporiser that no limit binds. It is the uptake at that target plus what circuit and lung hold at the end.
 *
 * It follows the very course that `solveCircleSystem` gives where `hold` meets no limit, so such a plan delivers the
 * floor plus what it spills, and never less. A plan whose end-tidal fraction comes later to the target, or falls short
 * of it, takes up less and can go below; its result says that it did so.
 */
export const solveFloor: (given: CircleCase, out: CircleOutcome) => void = solver.solveFloor;
