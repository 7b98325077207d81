/** Whether a workbook that began as the demo holds a department's own figures by now. */
import { readCell } from '#lib/calc/cell-path.ts';
import { demoWorkbook } from './demo.ts';
import type { Workbook } from './workbook.ts';

/** A department's own: how many cases of what length, and what things cost. The rest may well be as in the demo. */
function* ownCells(workbook: Workbook): Generator<readonly [path: string, value: number | string]> {
  for (const { id, casesPerYear, minutes } of workbook.caseMix) {
    yield [`caseMix.${id}.casesPerYear`, casesPerYear];
    yield [`caseMix.${id}.minutes`, minutes];
  }
  for (const { agent, bottlePrice } of workbook.agents) yield [`agents.${agent}.bottlePrice`, bottlePrice];
  for (const { id, pricePerKg } of workbook.absorbents) yield [`absorbents.${id}.pricePerKg`, pricePerKg];
  for (const { id, unitPrice, servicePerUnitPerYear } of workbook.machines) {
    yield [`machines.${id}.unitPrice`, unitPrice];
    yield [`machines.${id}.servicePerUnitPerYear`, servicePerUnitPerYear];
  }
  for (const { item, unitPrice } of workbook.monitorPrices)
    yield [`monitorPrices.${item}.unitPrice`, unitPrice];
  yield ['gases.oxygenPerM3', workbook.gases.oxygenPerM3];
  yield ['gases.airPerM3', workbook.gases.airPerM3];
  yield ['gases.nitrousOxidePerKg', workbook.gases.nitrousOxidePerKg];
  yield ['site.electricityPricePerKWh', workbook.site.electricityPricePerKWh];
}

/** True where more than half of the case numbers, minutes and prices are no longer the demo's; cells of 0 say nothing. */
export function mostlyOwn(workbook: Workbook): boolean {
  const demo = demoWorkbook();
  let own = 0;
  let all = 0;
  for (const [path, value] of ownCells(workbook)) {
    if (Number(value) === 0) continue;
    all++;
    if (Number(readCell(demo, path) ?? NaN) !== Number(value)) own++;
  }
  return own > all / 2;
}
