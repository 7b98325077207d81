import { describe, expect, it } from 'vitest';
import { recordCount2026, referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';
import { findReferenceSet, newestReferenceSet, referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { take } from '#lib/calc/reference/reference-set.ts';

describe('reference sets', () => {
  it('gives no id twice', () => {
    expect(referenceSet2026.constants.size).toBe(recordCount2026);
  });

  it('finds a set by id, and says so where there is none', () => {
    expect(findReferenceSet('2026-1')).toBe(referenceSet2026);
    expect(findReferenceSet('1999-1')).toBeNull();
    expect(referenceSets).toContain(newestReferenceSet);
  });

  it('has every constant that the core takes by template', () => {
    const agents = ['sevoflurane', 'isoflurane', 'desflurane', 'halothane', 'enflurane'];
    const perAgent = [
      'molar-mass',
      'liquid-density',
      'blood-gas',
      'vessel-rich-blood',
      'muscle-blood',
      'fat-blood',
      'mac40',
      'metabolised',
      'vaporiser-maximum'
    ];
    const bodies = {
      eger: ['vessel-rich', 'muscle', 'fat'],
      'reference-adult': ['vessel-rich', 'muscle', 'fat'],
      'two-fat': ['vessel-rich', 'muscle', 'fat-well-perfused', 'fat-poorly-perfused']
    };
    const ids = [
      ...agents.flatMap((agent) => perAgent.map((quantity) => `${agent}.${quantity}`)),
      ...['molar-mass', 'blood-gas', 'mac40', 'pipe-loss'].map((quantity) => `nitrous-oxide.${quantity}`),
      ...Object.entries(bodies).flatMap(([body, groups]) =>
        groups.flatMap((group) => [`body.${body}.${group}.volume`, `body.${body}.${group}.share`])
      ),
      ...[...agents, 'nitrous-oxide'].flatMap((subject) => [
        `warming.AR6.20.${subject}`,
        `warming.AR6.100.${subject}`,
        `warming.AR6.500.${subject}`,
        `warming.AR5.100.${subject}`
      ]),
      ...['sevoflurane', 'isoflurane', 'desflurane', 'nitrous-oxide'].map(
        (subject) => `warming.literature-2012.100.${subject}`
      ),
      ...['intraperitoneal', 'gynaecological', 'extraperitoneal'].map(
        (kind) => `pneumoperitoneum.${kind}.co2-rise`
      ),
      'gas-constant',
      'mac.age-slope',
      'body.cardiac-output.coefficient',
      'body.oxygen-consumption.coefficient',
      'body.co2-production.coefficient',
      'body.size-exponent',
      'body.standard-weight',
      'child.oxygen-consumption.slope',
      'child.oxygen-consumption.intercept',
      'child.co2-production.slope',
      'child.co2-production.intercept',
      'child.weight-limit',
      'alveolar-ventilation.factor',
      'arterial-co2',
      'circuit.volume',
      'lung.functional-residual-capacity',
      'lung.tissue-and-blood',
      'lung.dead-space',
      'absorbent.soda-lime.capacity',
      'absorbent.alkali-free-lime.capacity',
      'air.oxygen-fraction',
      'capture.sevoflurane',
      'capture.desflurane',
      'machine.power',
      'machine.life',
      'oxygen.co2e',
      'intravenous.co2e',
      'intravenous.propofol-rate',
      'discount-rate.public-sector'
    ];
    expect(ids.filter((id) => !referenceSet2026.constants.has(id))).toEqual([]);
  });

  it('throws for an id that it does not have', () => {
    expect(() => take(referenceSet2026, 'sevoflurane.colour')).toThrow('no constant “sevoflurane.colour”');
  });
});
