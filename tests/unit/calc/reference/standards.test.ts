import { describe, expect, it } from 'vitest';
import { monitoringStandards } from '#lib/calc/input.ts';
import type { MonitorItem } from '#lib/calc/input.ts';
import type { MonitoringLevel, MonitoringNeed } from '#lib/calc/estimate-types.ts';
import { disagreements, positionsOn } from '#lib/calc/reference/standards/disagreements.ts';
import type { RuleItem, RuleLevel } from '#lib/calc/reference/standards/monitoring-rule.ts';
import { monitoringDocuments, standards } from '#lib/calc/reference/standards/standards.ts';
import { cautions } from '#lib/calc/monitoring/cautions.ts';

// The reference keeps words of its own, as it knows nobody; these lines stop compiling when the two part.
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;
const itemsAgree: Same<RuleItem, MonitoringNeed['item']> = true;
const levelsAgree: Same<RuleLevel, MonitoringLevel> = true;
const everyMonitorCanBeAskedFor: [MonitorItem] extends [RuleItem] ? true : false = true;

describe('monitoring documents', () => {
  it('speak the words of the contract', () => {
    expect([itemsAgree, levelsAgree, everyMonitorCanBeAskedFor]).toEqual([true, true, true]);
    expect(Object.keys(standards).sort()).toEqual([...monitoringStandards].sort());
  });

  it.each(monitoringDocuments.map((document) => [document.id, document] as const))(
    '%s is complete',
    (id, { name, source, limits, rules }) => {
      expect(name).not.toBe('');
      expect(limits).toMatch(/\.$/);
      expect([source.locator, source.doi, source.year].some((part) => part !== undefined)).toBe(true);
      expect(rules.length).toBeGreaterThan(0);
      for (const rule of rules) {
        expect(rule.id).toBe(`${id}.${rule.item}`);
        expect(rule.word).not.toBe('');
        expect(rule.when.length).toBeGreaterThan(0);
        expect(rule.detail).toMatch(/^$|^[A-Z].*\.$/);
      }
    }
  );

  it('have an id for each rule', () => {
    const ids = monitoringDocuments.flatMap(({ rules }) => rules.map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('never require what is only remembered', () => {
    const remembered = monitoringDocuments
      .flatMap(({ rules }) => rules)
      .filter(({ evidence }) => evidence === 'memory');
    expect(remembered.length).toBeGreaterThan(0);
    expect(remembered.filter(({ level }) => level === 'required')).toEqual([]);
  });
});

describe('disagreements between standards', () => {
  const levels = (item: RuleItem) =>
    Object.fromEntries(Object.entries(positionsOn(item)).map(([id, rule]) => [id, rule?.level ?? null]));

  it.each(disagreements.map(({ item }) => item))('on %s show in the rules', (item) => {
    const sayings = Object.values(positionsOn(item)).map((rule) =>
      rule === null ? 'not named' : `${rule.level}: ${rule.detail}`
    );
    expect(new Set(sayings).size).toBeGreaterThan(1);
  });

  it('are stated as the rules have them', () => {
    expect(levels('agent-concentration')).toEqual({
      'who-wfsa': null,
      asa: null,
      'association-of-anaesthetists': 'recommended',
      cas: 'required',
      anzca: 'required',
      jsa: null
    });
    expect(levels('ecg')).toEqual({
      'who-wfsa': 'recommended',
      asa: 'required',
      'association-of-anaesthetists': 'required',
      cas: 'required',
      anzca: 'available',
      jsa: 'required'
    });
    expect(levels('neuromuscular')).toEqual({
      'who-wfsa': 'recommended',
      asa: 'recommended',
      'association-of-anaesthetists': 'recommended',
      cas: 'required',
      anzca: null,
      jsa: 'required'
    });
    expect(positionsOn('non-invasive-blood-pressure').anzca?.detail).toContain('10 min');
  });
});

describe('cautions', () => {
  it('name malignant hyperthermia with every standard, and the ASA’s newer text with the ASA’s', () => {
    for (const standard of monitoringStandards) {
      const ids = cautions(standard).map(({ id }) => id);
      expect(ids).toContain('caution.malignant-hyperthermia');
      expect(ids.includes('caution.asa-amendment')).toBe(standard === 'asa');
    }
  });
});
