import type { CircleCase } from '#lib/calc/case/circle-system.ts';

/** What a run gives, L vapour. */
export interface RungeKuttaOutcome {
  deliveredL: number;
  takenUpL: number;
  spilledL: number;
}

const mixingTimeMin = 0.25;
const width = 20;
const y = new Float64Array(width);
const z = new Float64Array(width);
const k1 = new Float64Array(width);
const k2 = new Float64Array(width);
const k3 = new Float64Array(width);
const k4 = new Float64Array(width);
const carry = new Float64Array(width);
const turnover = new Float64Array(width);

/**
 * The yardstick of the bench: the same equations by the classical fixed-step method of order 4, written as one would
 * write it for speed. No allocation, steps that end on the phases' ends, limits as plain clamps.
 */
export function solveByRungeKutta(given: CircleCase, stepMin: number, out: RungeKuttaOutcome): void {
  const { tissues, targetFraction: target, lungVolumeL: lung, circuitVolumeL: circuit } = given;
  const { alveolarVentilationLPerMin: ventilation, oxygenUptakeLPerMin: oxygen } = given;
  // Circuit, lung, delivered, spilled, then the tissues.
  const n = 4 + tissues.length;
  let carrySum = 0;
  for (let i = 4; i < n; i++) {
    const { volumeL, tissueBlood, outputShare } = tissues[i - 4]!;
    const flow = given.cardiacOutputLPerMin * outputShare;
    carry[i] = given.bloodGas * flow;
    turnover[i] = flow / (volumeL * tissueBlood);
    carrySum += carry[i]!;
  }
  y.fill(0);
  for (const { minutes, flowLPerMin, vaporiser, dialFraction } of given.phases) {
    const limit = vaporiser === 'off' ? 0 : (flowLPerMin * dialFraction) / (1 - dialFraction);
    const holds = vaporiser === 'hold';
    const steps = Math.ceil(minutes / stepMin);
    const h = minutes / steps;
    const rates = (x: Float64Array, f: Float64Array): void => {
      const c = x[0]!;
      const a = x[1]!;
      let back = 0;
      let backRate = 0;
      for (let i = 4; i < n; i++) {
        back += carry[i]! * x[i]!;
        f[i] = turnover[i]! * (a - x[i]!);
        backRate += carry[i]! * f[i]!;
      }
      const uptake = carrySum * a - back;
      const breathed = ventilation * (c - a);
      const gas = flowLPerMin - oxygen - uptake;
      let vapour = limit;
      if (holds) {
        const need = target + (carrySum * target - back) / ventilation;
        const net = breathed + circuit * ((need - c) / mixingTimeMin - backRate / ventilation);
        const wanted = net + gas > 0 ? (net + gas * c) / (1 - c) : net;
        vapour = wanted < limit ? (wanted > 0 ? wanted : 0) : limit;
      }
      const spill = gas + vapour > 0 ? (gas + vapour) * c : 0;
      f[0] = (vapour - breathed - spill) / circuit;
      f[1] = (breathed - uptake) / lung;
      f[2] = vapour;
      f[3] = spill;
    };
    for (let s = 0; s < steps; s++) {
      rates(y, k1);
      for (let i = 0; i < n; i++) z[i] = y[i]! + (h / 2) * k1[i]!;
      rates(z, k2);
      for (let i = 0; i < n; i++) z[i] = y[i]! + (h / 2) * k2[i]!;
      rates(z, k3);
      for (let i = 0; i < n; i++) z[i] = y[i]! + h * k3[i]!;
      rates(z, k4);
      for (let i = 0; i < n; i++) y[i] = y[i]! + (h / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!);
    }
  }
  let takenUp = 0;
  for (let i = 4; i < n; i++) {
    const { volumeL, tissueBlood } = tissues[i - 4]!;
    takenUp += given.bloodGas * tissueBlood * volumeL * y[i]!;
  }
  out.deliveredL = y[2]!;
  out.spilledL = y[3]!;
  out.takenUpL = takenUp;
}
