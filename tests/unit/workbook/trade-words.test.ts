import { describe, expect, test } from 'vitest';
import type { CaseRow } from '#lib/calc/input.ts';
import { readCell } from '#lib/calc/cell-path.ts';
import { departmentWorkbook } from '../../fixtures/department.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';

/** What a cell of the demo's first row, a volatile one, holds once a text is typed into it; the sentence if refused. */
const typed = (key: keyof CaseRow, text: string): unknown => {
  const path = `caseMix.lap-chole.${key}`;
  const { workbook, refused } = editCells(departmentWorkbook(), [{ path, text }], 'en-GB');
  return refused[0]?.sentence ?? readCell(workbook, path);
};

describe('a cell takes words of the trade', () => {
  test.each([
    ['technique', 'TIVA', 'intravenous'],
    ['technique', 'TCI', 'intravenous'],
    ['technique', 'propofol', 'intravenous'],
    ['technique', 'GA', 'volatile'],
    ['technique', 'General anaesthesia', 'volatile'],
    ['technique', 'inhalational', 'volatile'],
    ['technique', 'Spinal', 'regional'],
    ['technique', 'epidural', 'regional'],
    ['technique', 'Local', 'regional'],
    ['agent', 'sevo', 'sevoflurane'],
    ['agent', 'O2/N2O/Sevo', 'sevoflurane'],
    ['agent', 'Des', 'desflurane'],
    ['airway', 'ETT', 'tracheal-tube'],
    ['airway', 'Tube', 'tracheal-tube'],
    ['airway', 'LMA', 'supraglottic'],
    ['airway', 'laryngeal mask', 'supraglottic'],
    ['airway', 'face mask', 'mask'],
    ['pneumoperitoneum', 'laparoscopic', 'intraperitoneal'],
    ['pneumoperitoneum', 'retroperitoneal', 'extraperitoneal']
  ] as const)('%s: %s is %s', (key, text, value) => {
    expect(typed(key, text)).toBe(value);
  });

  test('and numbers as the trade writes them', () => {
    expect(typed('inspiredOxygenPercent', 'FiO2 0.4')).toBe(40);
    expect(typed('inspiredOxygenPercent', 'FiO2 50%')).toBe(50);
    expect(typed('inspiredOxygenPercent', '0.35')).toBe(35);
    expect(typed('inspiredOxygenPercent', '1')).toBe(100);
    expect(typed('targetMac', '90%')).toBe(0.9);
    expect(typed('minutes', '=30*2')).toBe(60);
    expect(typed('casesPerYear', '90+30')).toBe(120);
  });

  test('but not what only resembles one', () => {
    expect(typed('technique', 'hypnosis')).toMatch(/“hypnosis” was given/);
    expect(typed('agent', 'desk')).toMatch(/“desk” was given/);
    expect(typed('airway', 'tubular')).toMatch(/“tubular” was given/);
    expect(typed('inspiredOxygenPercent', '0.1')).toMatch(/21 to 100/);
    expect(typed('nitrousOxidePercent', '0.4')).toBe(0.4);
  });

  test('“propofol” names no volatile agent', () => {
    const { workbook } = editCells(
      departmentWorkbook(),
      [
        { path: 'caseMix.lap-chole.technique', text: 'TIVA' },
        { path: 'caseMix.lap-chole.agent', text: 'Propofol' }
      ],
      'en-GB'
    );
    expect(workbook.caseMix[0]).toMatchObject({ technique: 'intravenous', agent: null });
  });

  test('arithmetic in a price is exact to the last decimal', () => {
    const path = 'agents.sevoflurane.bottlePrice';
    const { workbook } = editCells(departmentWorkbook(), [{ path, text: '=39.90*3' }], 'en-GB');
    expect(readCell(workbook, path)).toBe('119.70');
  });
});
