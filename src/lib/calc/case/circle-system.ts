/**
 * One anaesthetic as a circle system: a circuit, a lung, and tissues in parallel, all well mixed.
 *
 *     U            = λ Q Σ q_k (F_A − P_k)                      agent that the blood carries off
 *     V_L  F_A'    = V_A (F_C − F_A) − U
 *     V_k s_k P_k' = q_k Q (F_A − P_k)
 *     spill        = max(0, F + v − VO2 − U)                    gas that leaves: relief valve, leak, unreturned sample
 *     V_C  F_C'    = v − V_A (F_C − F_A) − spill · F_C
 *
 * F_C, F_A, P_k are the agent's share of the gas in circuit and lung and its tension in each tissue, v the vapour flow.
 * The vaporiser is off (v = 0), sits at a dial D (v = F D / (1 − D)), or holds the end-tidal target F_T: the inspired
 * share that keeps F_A at F_T is F_need = F_T + λ Q Σ q_k (F_T − P_k) / V_A, and the circuit is led to it with the mixing
 * time τ, F_C' = (F_need − F_C) / τ, as far as 0 ≤ v ≤ F D / (1 − D) allows.
 *
 * So the system is smooth but for the moments at which the vaporiser meets a limit, or gas begins or ceases to spill.
 * Between them it is solved by a stiffly accurate, L-stable Rosenbrock method of order 4 with an embedded one of order 3
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

export interface CirclePhase {
  readonly minutes: number;
  /** Carrier gas set on the flowmeters, L/min, above 0. */
  readonly flowLPerMin: number;
  readonly vaporiser: 'hold' | 'dial' | 'off';
  /** The setting with `dial`, the upper limit with `hold`: share of the mixture, 0 to below 1. */
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
  readonly tissues: readonly Tissue[];
  /** End-tidal fraction to hold; also what "reached" is measured against. */
  readonly targetFraction: number;
  readonly phases: readonly CirclePhase[];
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
  /** First time with F_A ≥ 0.95 F_T; NaN where that never comes. */
  minutesToTarget: number;
  /** Minutes with F_A < 0.95 F_T after it was reached. */
  minutesBelowTarget: number;
  /** Those of them in which the plan had the vaporiser off. */
  minutesBelowWhileOff: number;
  /** By phase, at its end: vapour delivered, vapour taken up, and the integral of F_A over time (min) so far. */
  readonly deliveredByPhaseL: Float64Array;
  readonly takenUpByPhaseL: Float64Array;
  readonly endTidalByPhaseMin: Float64Array;
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

/** Most phases and most tissues that a run takes. */
export const PHASE_LIMIT = 16;
const TISSUE_LIMIT = 12;

/** Time in which the circuit is led to the inspired share that is needed, min: a modelling choice. */
export const MIXING_TIME_MIN = 0.25;
/** Share of the target at which it counts as reached. */
export const REACHED_SHARE = 0.95;
/** Local error allowed per step: a share of the target for fractions, of the vapour delivered for volumes. */
export const STEP_TOLERANCE = 0.01;

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
    steps: 0,
    rejected: 0,
    switches: 0
  };
}

// The method's coefficients, in the form of Hairer & Wanner: the stage states are y + Σ a_ij k_j, the right sides
// f + Σ c_ij k_j / h. Stage 6 starts from stage 5's state + k5, the result is that + k6, and k6 is the error estimate.
const GAMMA = 0.25;
const A21 = 1.544;
const A31 = 0.9466785280815826;
const A32 = 0.2557011698983284;
const A41 = 3.314825187068521;
const A42 = 2.896124015972201;
const A43 = 0.9986419139977817;
const A51 = 1.221224509226641;
const A52 = 6.019134481288629;
const A53 = 12.53708332932087;
const A54 = -0.687886036105895;
const C21 = -5.6688;
const C31 = -2.430093356833875;
const C32 = -0.2063599157091915;
const C41 = -0.1073529058151375;
const C42 = -9.594562251023355;
const C43 = -20.47028614809616;
const C51 = 7.496443313967647;
const C52 = -10.24680431464352;
const C53 = -33.99990352819905;
const C54 = 11.7089089320616;
const C61 = 8.083246795921522;
const C62 = -7.981132988064893;
const C63 = -31.52159432874371;
const C64 = 16.31930543123136;
const C65 = -6.058818238834054;

/** By how much stricter a step's error is held for volumes, which add up, than for fractions, which decay. */
const VOLUME_STRICTNESS = 3;
const FIRST_STEP_MIN = 0.1;
const STEP_AFTER_SWITCH_MIN = 0.3;
/** A step this short is taken whatever its error: the state hardly changes. */
const SHORTEST_STEP_MIN = 1e-7;
const LARGEST_GROWTH = 6;
const SMALLEST_GROWTH = 0.15;
const BISECTIONS = 12;
const CROSSING_BISECTIONS = 24;
const POINTS_PER_STEP = 6;

// Places in a state: circuit, lung, vapour delivered, vapour spilled, ∫F_A dt, then the tissues.
const C = 0;
const A = 1;
const D = 2;
const S = 3;
const E = 4;
const P = 5;
const WIDTH = P + TISSUE_LIMIT;

// What the vaporiser does, and whether gas spills.
const SHUT = 0;
const LIMITED = 1;
const HOLDING = 2;
const SPILLING = 4;

const vector = () => new Float64Array(WIDTH);
const y = vector();
const yNew = vector();
const rate = vector();
const rateNew = vector();
const z = vector();
const f = vector();
const r = vector();
const k1 = vector();
const k2 = vector();
const k3 = vector();
const k4 = vector();
const k5 = vector();
const k6 = vector();
/** λ Q q_k: blood flow to each tissue as the gas volume that it can carry, L/min. */
const carry = vector();
/** 1 / time constant of each tissue, 1/min. */
const turnover = vector();
/** 1 / (1/(γh) + turnover), by tissue. */
const inverse = vector();

/** The case and phase at hand. One object that is written over, so that a run allocates nothing. */
const m = {
  width: P,
  ventilation: 0,
  lung: 0,
  circuit: 0,
  oxygen: 0,
  /** Σ λ Q q_k. */
  carrySum: 0,
  target: 0,
  flow: 0,
  limit: 0,
  holds: false,
  /** The floor's run: nothing spills and no limit acts. */
  ideal: false,
  regime: SHUT,
  /** The regime found behind a switch point. */
  regimeAfter: SHUT,
  minute: 0,
  /** The step that the controller would like next, min. */
  step: 0
};

/** Σ λ Q q_k x_k over the tissues of a state or of its rate. */
function carried(x: Float64Array): number {
  let sum = 0;
  for (let i = P; i < m.width; i++) sum += carry[i]! * x[i]!;
  return sum;
}

/** The regime that belongs to a state, B being what the blood brings back, Σ λ Q q_k P_k. */
function regimeAt(circuit: number, lung: number, back: number): number {
  if (m.ideal) return HOLDING;
  const gas = m.flow - m.oxygen - m.carrySum * lung + back;
  if (m.holds) {
    const need = m.target + (m.carrySum * m.target - back) / m.ventilation;
    const net = m.ventilation * (circuit - lung) + (m.circuit * (need - circuit)) / MIXING_TIME_MIN;
    const vapour = net + gas > 0 ? (net + gas * circuit) / (1 - circuit) : net;
    if (vapour < m.limit) {
      if (vapour > 0) return net + gas > 0 ? HOLDING + SPILLING : HOLDING;
      return gas > 0 ? SHUT + SPILLING : SHUT;
    }
  }
  return gas + m.limit > 0 ? LIMITED + SPILLING : LIMITED;
}

/** Vapour flow in the present regime, L/min. */
function vapourAt(circuit: number, lung: number, back: number): number {
  if ((m.regime & HOLDING) === 0) return (m.regime & LIMITED) === 0 ? 0 : m.limit;
  const need = m.target + (m.carrySum * m.target - back) / m.ventilation;
  const net = m.ventilation * (circuit - lung) + (m.circuit * (need - circuit)) / MIXING_TIME_MIN;
  if ((m.regime & SPILLING) === 0) return net;
  return (net + (m.flow - m.oxygen - m.carrySum * lung + back) * circuit) / (1 - circuit);
}

/** The right-hand side in the present regime, without its switches: dx/dt of the state x. */
function rates(x: Float64Array, out: Float64Array): void {
  const circuit = x[C]!;
  const lung = x[A]!;
  let back = 0;
  for (let i = P; i < m.width; i++) {
    const tension = x[i]!;
    back += carry[i]! * tension;
    out[i] = turnover[i]! * (lung - tension);
  }
  const uptake = m.carrySum * lung - back;
  const breathed = m.ventilation * (circuit - lung);
  const gas = m.flow - m.oxygen - uptake;
  out[A] = (breathed - uptake) / m.lung;
  out[E] = lung;
  if ((m.regime & HOLDING) !== 0) {
    const toCircuit = (m.target + (m.carrySum * m.target - back) / m.ventilation - circuit) / MIXING_TIME_MIN;
    const net = breathed + m.circuit * toCircuit;
    const vapour = (m.regime & SPILLING) !== 0 ? (net + gas * circuit) / (1 - circuit) : net;
    out[C] = toCircuit;
    out[D] = vapour;
    out[S] = vapour - net;
  } else {
    const vapour = (m.regime & LIMITED) !== 0 ? m.limit : 0;
    const spilled = (m.regime & SPILLING) !== 0 ? (gas + vapour) * circuit : 0;
    out[C] = (vapour - breathed - spilled) / m.circuit;
    out[D] = vapour;
    out[S] = spilled;
  }
}

// The linear system of a step: partial derivatives by circuit, lung and returning blood, and the inverted two-by-two.
const j = {
  invGammaH: 0,
  gammaH: 0,
  backPerLung: 0,
  circuitByBack: 0,
  lungByBack: 0,
  deliveredByC: 0,
  deliveredByA: 0,
  deliveredByB: 0,
  spilledByC: 0,
  spilledByA: 0,
  spilledByB: 0,
  m11: 0,
  m12: 0,
  m21: 0,
  m22: 0
};

/** Sets up 1/(γh) − J at the state y with its tissues eliminated. */
function factorise(h: number): void {
  const sigma = 1 / (GAMMA * h);
  const circuit = y[C]!;
  let back = 0;
  let backPerLung = 0;
  for (let i = P; i < m.width; i++) {
    const inv = 1 / (sigma + turnover[i]!);
    inverse[i] = inv;
    back += carry[i]! * y[i]!;
    backPerLung += carry[i]! * turnover[i]! * inv;
  }
  const gas = m.flow - m.oxygen - m.carrySum * y[A]! + back;
  let circuitByC: number, circuitByA: number, circuitByB: number;
  let deliveredByC = 0;
  let deliveredByA = 0;
  let deliveredByB = 0;
  let spilledByC = 0;
  let spilledByA = 0;
  let spilledByB = 0;
  const spilling = (m.regime & SPILLING) !== 0;
  if ((m.regime & HOLDING) !== 0) {
    circuitByC = -1 / MIXING_TIME_MIN;
    circuitByA = 0;
    circuitByB = circuitByC / m.ventilation;
    const netByC = m.ventilation + m.circuit * circuitByC;
    const netByA = -m.ventilation;
    const netByB = m.circuit * circuitByB;
    if (spilling) {
      const share = 1 / (1 - circuit);
      deliveredByC = (netByC + gas + rate[D]!) * share;
      deliveredByA = (netByA - m.carrySum * circuit) * share;
      deliveredByB = (netByB + circuit) * share;
      spilledByC = deliveredByC - netByC;
      spilledByA = deliveredByA - netByA;
      spilledByB = deliveredByB - netByB;
    } else {
      deliveredByC = netByC;
      deliveredByA = netByA;
      deliveredByB = netByB;
    }
  } else {
    if (spilling) {
      spilledByC = gas + rate[D]!;
      spilledByA = -m.carrySum * circuit;
      spilledByB = circuit;
    }
    circuitByC = -(m.ventilation + spilledByC) / m.circuit;
    circuitByA = (m.ventilation - spilledByA) / m.circuit;
    circuitByB = -spilledByB / m.circuit;
  }
  const lungByC = m.ventilation / m.lung;
  const lungByA = -(m.ventilation + m.carrySum) / m.lung;
  const lungByB = 1 / m.lung;
  const a = sigma - circuitByC;
  const b = -(circuitByA + circuitByB * backPerLung);
  const c = -lungByC;
  const d = sigma - lungByA - lungByB * backPerLung;
  const determinant = a * d - b * c;
  j.invGammaH = sigma;
  j.gammaH = GAMMA * h;
  j.backPerLung = backPerLung;
  j.circuitByBack = circuitByB;
  j.lungByBack = lungByB;
  j.deliveredByC = deliveredByC;
  j.deliveredByA = deliveredByA;
  j.deliveredByB = deliveredByB;
  j.spilledByC = spilledByC;
  j.spilledByA = spilledByA;
  j.spilledByB = spilledByB;
  j.m11 = d / determinant;
  j.m12 = -b / determinant;
  j.m21 = -c / determinant;
  j.m22 = a / determinant;
}

/** Solves (1/(γh) − J) k = right. */
function solveStage(right: Float64Array, k: Float64Array): void {
  let back = 0;
  for (let i = P; i < m.width; i++) back += carry[i]! * inverse[i]! * right[i]!;
  const c = right[C]! + j.circuitByBack * back;
  const a = right[A]! + j.lungByBack * back;
  const circuit = j.m11 * c + j.m12 * a;
  const lung = j.m21 * c + j.m22 * a;
  back += j.backPerLung * lung;
  k[C] = circuit;
  k[A] = lung;
  k[D] = (right[D]! + j.deliveredByC * circuit + j.deliveredByA * lung + j.deliveredByB * back) * j.gammaH;
  k[S] = (right[S]! + j.spilledByC * circuit + j.spilledByA * lung + j.spilledByB * back) * j.gammaH;
  k[E] = (right[E]! + lung) * j.gammaH;
  for (let i = P; i < m.width; i++) k[i] = (right[i]! + turnover[i]! * lung) * inverse[i]!;
}

/** One step of length h from y (with its rate) to yNew; the error estimate is left in k6. */
function step(h: number): void {
  const n = m.width;
  const perH = 1 / h;
  factorise(h);
  solveStage(rate, k1);
  for (let i = 0; i < n; i++) z[i] = y[i]! + A21 * k1[i]!;
  rates(z, f);
  for (let i = 0; i < n; i++) r[i] = f[i]! + perH * (C21 * k1[i]!);
  solveStage(r, k2);
  for (let i = 0; i < n; i++) z[i] = y[i]! + A31 * k1[i]! + A32 * k2[i]!;
  rates(z, f);
  for (let i = 0; i < n; i++) r[i] = f[i]! + perH * (C31 * k1[i]! + C32 * k2[i]!);
  solveStage(r, k3);
  for (let i = 0; i < n; i++) z[i] = y[i]! + A41 * k1[i]! + A42 * k2[i]! + A43 * k3[i]!;
  rates(z, f);
  for (let i = 0; i < n; i++) r[i] = f[i]! + perH * (C41 * k1[i]! + C42 * k2[i]! + C43 * k3[i]!);
  solveStage(r, k4);
  for (let i = 0; i < n; i++) z[i] = y[i]! + A51 * k1[i]! + A52 * k2[i]! + A53 * k3[i]! + A54 * k4[i]!;
  rates(z, f);
  for (let i = 0; i < n; i++)
    r[i] = f[i]! + perH * (C51 * k1[i]! + C52 * k2[i]! + C53 * k3[i]! + C54 * k4[i]!);
  solveStage(r, k5);
  for (let i = 0; i < n; i++) z[i] = z[i]! + k5[i]!;
  rates(z, f);
  for (let i = 0; i < n; i++)
    r[i] = f[i]! + perH * (C61 * k1[i]! + C62 * k2[i]! + C63 * k3[i]! + C64 * k4[i]! + C65 * k5[i]!);
  solveStage(r, k6);
  for (let i = 0; i < n; i++) yNew[i] = z[i]! + k6[i]!;
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
  const ofFraction = 1 / (STEP_TOLERANCE * scale);
  let worst = Math.max(Math.abs(k6[C]!), Math.abs(k6[A]!)) * ofFraction;
  for (let i = P; i < m.width; i++) worst = Math.max(worst, Math.abs(k6[i]!) * ofFraction);
  const ofVolume = VOLUME_STRICTNESS / (STEP_TOLERANCE * (yNew[D]! + scale * m.carrySum * 2));
  return Math.max(worst, Math.max(Math.abs(k6[D]!), Math.abs(k6[S]!)) * ofVolume);
}

/**
 * Share of the step from y to yNew after which another regime holds, to 2^-BISECTIONS from above; the regime there is
 * left in `m.regimeAfter`. 1 where the regime at the end is the present one, or where it did not hold at the start
 * either (a point located just short of the switch).
 */
function switchShare(h: number): number {
  const backFrom = carried(y);
  const backTo = carried(yNew);
  m.regimeAfter = regimeAt(yNew[C]!, yNew[A]!, backTo);
  if (m.regimeAfter === m.regime || regimeAt(y[C]!, y[A]!, backFrom) !== m.regime) return 1;
  const slopeFrom = carried(rate);
  const slopeTo = carried(rateNew);
  let low = 0;
  let high = 1;
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (low + high) / 2;
    const regime = regimeAt(
      hermite(y[C]!, rate[C]!, yNew[C]!, rateNew[C]!, h, middle),
      hermite(y[A]!, rate[A]!, yNew[A]!, rateNew[A]!, h, middle),
      hermite(backFrom, slopeFrom, backTo, slopeTo, h, middle)
    );
    if (regime === m.regime) low = middle;
    else {
      high = middle;
      m.regimeAfter = regime;
    }
  }
  return high;
}

/** Share of the step at which F_A crosses the level. */
function crossingShare(h: number, level: number): number {
  const above = y[A]! >= level;
  let low = 0;
  let high = 1;
  for (let i = 0; i < CROSSING_BISECTIONS; i++) {
    const middle = (low + high) / 2;
    if (hermite(y[A]!, rate[A]!, yNew[A]!, rateNew[A]!, h, middle) >= level === above) low = middle;
    else high = middle;
  }
  return high;
}

/** Keeps account of when the target was reached, and of the minutes below it afterwards. */
function watchTarget(h: number, vaporiserOff: boolean, out: CircleOutcome): void {
  const level = REACHED_SHARE * m.target;
  const from = y[A]!;
  const to = yNew[A]!;
  let below = 0;
  if (Number.isNaN(out.minutesToTarget)) {
    if (to >= level) out.minutesToTarget = m.minute + h * (from >= level ? 0 : crossingShare(h, level));
  } else if (from < level && to < level) below = h;
  else if (from < level) below = h * crossingShare(h, level);
  else if (to < level) below = h * (1 - crossingShare(h, level));
  out.minutesBelowTarget += below;
  if (vaporiserOff) out.minutesBelowWhileOff += below;
}

/** Tells the course of the step from y to yNew in the regime that it was taken in. */
function tellCourse(h: number, course: CourseSink): void {
  const backFrom = carried(y);
  const backTo = carried(yNew);
  const slopeFrom = carried(rate);
  const slopeTo = carried(rateNew);
  for (let i = 0; i <= POINTS_PER_STEP; i++) {
    const theta = i / POINTS_PER_STEP;
    const inspiredFraction = hermite(y[C]!, rate[C]!, yNew[C]!, rateNew[C]!, h, theta);
    const endTidalFraction = hermite(y[A]!, rate[A]!, yNew[A]!, rateNew[A]!, h, theta);
    const back = hermite(backFrom, slopeFrom, backTo, slopeTo, h, theta);
    course.add({
      minute: m.minute + theta * h,
      flowLPerMin: m.flow,
      vapourLPerMin: vapourAt(inspiredFraction, endTidalFraction, back),
      inspiredFraction,
      endTidalFraction
    });
  }
}

/** Runs one phase from the state y at m.minute. */
function runPhase(
  minutes: number,
  scale: number,
  vaporiserOff: boolean,
  out: CircleOutcome,
  course: CourseSink | null
): void {
  m.regime = regimeAt(y[C]!, y[A]!, carried(y));
  rates(y, rate);
  m.step = Math.min(m.step, STEP_AFTER_SWITCH_MIN);
  let done = 0;
  while (done < minutes) {
    const remaining = minutes - done;
    let last = m.step >= remaining;
    let h = last ? remaining : m.step;
    step(h);
    out.steps++;
    const error = stepError(scale);
    const factor = Math.min(LARGEST_GROWTH, Math.max(SMALLEST_GROWTH, 0.9 * error ** -0.25));
    if (error > 1 && h > SHORTEST_STEP_MIN) {
      out.rejected++;
      m.step = h * factor;
      continue;
    }
    if (!last) m.step = h * factor;
    rates(yNew, rateNew);
    const share = switchShare(h);
    if (share < 1) {
      out.switches++;
      out.steps++;
      h *= share;
      last = false;
      step(h);
      rates(yNew, rateNew);
      m.step = Math.min(m.step, STEP_AFTER_SWITCH_MIN);
    }
    watchTarget(h, vaporiserOff, out);
    if (course !== null) tellCourse(h, course);
    y.set(yNew);
    m.minute += h;
    done = last ? minutes : done + h;
    if (m.regimeAfter === m.regime) rate.set(rateNew);
    else {
      m.regime = m.regimeAfter;
      rates(y, rate);
    }
  }
}

/** Puts the patient and the machine in place, with no agent anywhere. */
function begin(given: CircleCase): void {
  const { tissues, bloodGas, cardiacOutputLPerMin } = given;
  if (tissues.length > TISSUE_LIMIT)
    throw new RangeError(`A body of ${tissues.length} tissues: at most ${TISSUE_LIMIT} are provided for.`);
  m.width = P + tissues.length;
  m.ventilation = given.alveolarVentilationLPerMin;
  m.lung = given.lungVolumeL;
  m.circuit = given.circuitVolumeL;
  m.oxygen = given.oxygenUptakeLPerMin;
  m.target = given.targetFraction;
  m.carrySum = 0;
  for (let i = 0; i < tissues.length; i++) {
    const { volumeL, tissueBlood, outputShare } = tissues[i]!;
    carry[P + i] = bloodGas * cardiacOutputLPerMin * outputShare;
    turnover[P + i] = (outputShare * cardiacOutputLPerMin) / (volumeL * tissueBlood);
    m.carrySum += carry[P + i]!;
  }
  m.minute = 0;
  m.step = FIRST_STEP_MIN;
  y.fill(0);
}

/** What lies in the tissues, L vapour: Σ λ s_k V_k P_k. */
function inTissues(given: CircleCase): number {
  let sum = 0;
  for (let i = 0; i < given.tissues.length; i++) {
    const { volumeL, tissueBlood } = given.tissues[i]!;
    sum += given.bloodGas * tissueBlood * volumeL * y[P + i]!;
  }
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
function conclude(given: CircleCase, out: CircleOutcome): void {
  out.deliveredL = y[D]!;
  out.takenUpL = inTissues(given);
  out.spilledL = y[S]!;
  out.leftInCircuitL = m.circuit * y[C]!;
  out.leftInLungL = m.lung * y[A]!;
  out.balanceErrorL = out.deliveredL - out.takenUpL - out.spilledL - out.leftInCircuitL - out.leftInLungL;
}

/**
 * Solves one case and writes what became of the vapour into `out`.
 *
 * The case is taken as valid: flows, volumes and ventilation above 0, dial fractions from 0 to below 1, oxygen uptake at
 * most the flow, at most `PHASE_LIMIT` phases and 12 tissues. `course` receives the course of the same run; with or
 * without it the outcome has the same bits. Volumes are within 0.05 % of a solution at tolerance 1e-9 (see the tests).
 * @throws RangeError for more phases or tissues than provided for.
 */
export function solveCircleSystem(
  given: CircleCase,
  out: CircleOutcome,
  course: CourseSink | null = null
): void {
  const { phases } = given;
  if (phases.length > PHASE_LIMIT)
    throw new RangeError(`A plan of ${phases.length} phases: at most ${PHASE_LIMIT} are provided for.`);
  begin(given);
  clear(out);
  m.ideal = false;
  let scale = given.targetFraction;
  for (const { vaporiser, dialFraction } of phases)
    if (vaporiser === 'dial' && dialFraction > scale) scale = dialFraction;
  for (let i = 0; i < phases.length; i++) {
    const { minutes, flowLPerMin, vaporiser, dialFraction } = phases[i]!;
    m.flow = flowLPerMin;
    m.holds = vaporiser === 'hold';
    m.limit = vaporiser === 'off' ? 0 : (flowLPerMin * dialFraction) / (1 - dialFraction);
    // Without agent anywhere there is nothing to solve: a target of 0 and no fixed dial.
    if (scale > 0) runPhase(minutes, scale, vaporiser === 'off', out, course);
    out.deliveredByPhaseL[i] = y[D]!;
    out.takenUpByPhaseL[i] = inTissues(given);
    out.endTidalByPhaseMin[i] = y[E]!;
  }
  conclude(given, out);
}

/**
 * The floor, L vapour: what a circuit that spills nothing takes to hold the target from the first minute to the last,
 * with a vaporiser that no limit binds. It is the uptake at that target plus what circuit and lung hold at the end.
 *
 * It follows the very course that `solveCircleSystem` gives where `hold` meets no limit, so such a plan delivers the
 * floor plus what it spills, and never less. A plan whose end-tidal fraction comes later to the target, or falls short
 * of it, takes up less and can go below; its result says that it did so.
 */
export function solveFloor(given: CircleCase, out: CircleOutcome): void {
  begin(given);
  clear(out);
  m.ideal = true;
  let minutes = 0;
  for (const phase of given.phases) minutes += phase.minutes;
  if (given.targetFraction > 0) runPhase(minutes, given.targetFraction, false, out, null);
  conclude(given, out);
}
