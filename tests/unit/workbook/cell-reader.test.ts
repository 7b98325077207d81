import { expect, test } from 'vitest';
import { readCell } from '#lib/calc/cell-path.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

test.each([
  'title',
  'site.theatres',
  'caseMix.lap-chole',
  'caseMix.lap-chole.minutes',
  'agents.sevoflurane.bottlePrice',
  'monitors.capnography.unitPrice',
  'flowPlans.usual.phases.1.flowLPerMin',
  'scenarios.circle.agentSwitch.desflurane',
  'caseMix.nobody',
  'caseMix.nobody.minutes',
  'nowhere.at.all'
])('reads %s as the document has it', (path) => {
  expect(cellReader(demoWorkbook())(path)).toEqual(readCell(demoWorkbook(), path));
});
