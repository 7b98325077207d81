import { expect, test } from 'vitest';
import { routeOfCell } from '#lib/sheets/frame/sheet-list.ts';

test.each([
  ['site.electricityKgCo2ePerKWh', '/prices/'],
  ['site.electricityMarketKgCo2ePerKWh', '/emissions/'],
  ['site.medicalAirKWhPerM3', '/emissions/'],
  ['site.electricityKnownBy', '/emissions/'],
  ['site.baseYear', '/emissions/'],
  ['site.consumablesKgCo2ePerCase', '/emissions/'],
  ['agents.sevoflurane.manufactureKgCo2ePerKg', '/prices/'],
  ['machines.m-now.manufactureKgCo2ePerUnit', '/machines/']
])('%s stands on %s', (path, route) => {
  expect(routeOfCell(path)).toBe(route);
});
