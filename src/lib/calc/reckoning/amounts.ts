/** What the sums of an input all need of its cells. */
import type { CaptureOfAgent } from '../emissions/co2e-lines.ts';
import type { Absorbent, EstimateInput, Machine, Scenario } from '../input.ts';
import { take } from '../reference/reference-set.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { nitrousOxideMass } from '../year/consumption.ts';

export const powerOf = (r: Reckoner, { reference }: EstimateInput, { id, powerW }: Machine): Quantity =>
  powerW === null
    ? r.fallback(take(reference, 'machine.power'), 'machines', id, 'powerW')
    : r.cell(powerW, 'W', 'machines', id, 'powerW');

/** The shares of a scenario's capture. */
export const captureOf = (
  r: Reckoner,
  { id, capturePercent, caughtLostPercent }: Scenario
): Omit<CaptureOfAgent, 'atExhaustMl'> => ({
  capturePercent: r.cell(capturePercent, '%', 'scenarios', id, 'capturePercent'),
  caughtLostPercent:
    caughtLostPercent === null
      ? r.assumption(0, '%', 'No loss is counted of what is caught, as none is given.')
      : r.cell(caughtLostPercent, '%', 'scenarios', id, 'caughtLostPercent')
});

/** null: none is given. */
export const emissionsOfAbsorbent = (r: Reckoner, { id, kgCo2ePerKg }: Absorbent): Quantity | null =>
  kgCo2ePerKg === null ? null : r.cell(kgCo2ePerKg, 'kg CO2e/kg', 'absorbents', id, 'kgCo2ePerKg');

/** Mass of nitrous oxide, kg, from its volume in the theatre. */
export const massOfNitrousOxide = (
  r: Reckoner,
  { site, reference }: EstimateInput,
  volumeL: Quantity
): Quantity =>
  r.apply(nitrousOxideMass, {
    volumeL,
    pressureKPa: r.cell(site.ambientPressureKPa, 'kPa', 'site', 'ambientPressureKPa'),
    molarMassGPerMol: r.constant(take(reference, 'nitrous-oxide.molar-mass')),
    gasConstant: r.constant(take(reference, 'gas-constant')),
    temperatureC: r.cell(site.theatreTemperatureC, '°C', 'site', 'theatreTemperatureC'),
    zeroCelsiusK: r.constant(take(reference, 'zero-celsius'))
  });
