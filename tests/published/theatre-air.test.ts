/** Published figures of room air, computed with the core's own steps. */
import { expect, test } from 'vitest';
import { airLimits } from '#lib/calc/reference/exposure-limit-terms.ts';
import { take } from '#lib/calc/reference/reference-set.ts';
import { referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';
import { limitAsMass } from '#lib/calc/reckoning/theatre-air.ts';
import { massConcentration } from '#lib/calc/theatre-air/against-limits.ts';
import { buildUp, steadyConcentration } from '#lib/calc/theatre-air/room-air.ts';
import { plain } from '#lib/calc/working/plain.ts';

const value = (id: string): number => take(referenceSet2026, id).value;

// Engineering ToolBox, table of pollution in a room: 1 m3/h into 1 m3 at 4 air changes an hour. Tolerance: printed
// precision.
test('1 m³/h into 1 m³ at 4 air changes an hour: 0.1216 after 10, 0.2326 after 40 min, 0.2500 steady', () => {
  const airChangesPerH = 4;
  const steadyPpm = steadyConcentration.compute({
    escapingLPerMin: 1000 / 60,
    airChangesPerH,
    roomVolumeM3: 1
  });
  const after = (minutes: number): number => buildUp.compute({ steadyPpm, airChangesPerH, minutes }) / 1e6;
  expect(Math.abs(steadyPpm / 1e6 - 0.25)).toBeLessThan(1e-4);
  expect(Math.abs(after(10) - 0.1216)).toBeLessThan(1e-4);
  expect(Math.abs(after(40) - 0.2326)).toBeLessThan(1e-4);
});

// HSE EH40. Tolerance 0.5 %: published.
test('50 ppm of isoflurane at 20 °C is 383 mg/m³ (HSE EH40)', () => {
  const mgPerM3 = massConcentration.compute({
    ppm: 50,
    molarMassGPerMol: value('isoflurane.molar-mass'),
    pressureKPa: value('standard-atmosphere'),
    gasConstant: value('gas-constant'),
    temperatureC: 20,
    zeroCelsiusK: value('zero-celsius')
  });
  expect(Math.abs(mgPerM3 / 383 - 1)).toBeLessThan(0.005);
});

// Dutch Health Council, both units printed. Tolerance 0.5 %: printed with three figures. Sevoflurane is reported: its
// 153 mg/m3 is by analogy with isoflurane, and the 18 ppm beside it come to 149.7 mg/m3 (2 % less).
test.each([
  ['isoflurane', 153],
  ['nitrous-oxide', 152]
] as const)('the limit of the Netherlands for %s is %d mg/m³', (subject, printed) => {
  const [limit] = airLimits(referenceSet2026, subject, 'netherlands');
  if (limit === undefined) throw new Error('There is no such limit.');
  const mgPerM3 = plain.value(limitAsMass(plain, { reference: referenceSet2026 }, subject, limit));
  expect(Math.abs(mgPerM3 / printed - 1)).toBeLessThan(0.005);
});
