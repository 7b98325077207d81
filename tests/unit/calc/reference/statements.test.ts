import { describe, expect, it } from 'vitest';
import { statement, statements } from '#lib/calc/reference/statements.ts';

describe('statements', () => {
  it.each(statements.map((record) => [record.id, record] as const))('%s is complete', (id, record) => {
    expect(statement(id)).toBe(record);
    expect(record.statement).toMatch(/^[A-Z].*\.$/);
    const { title, locator, doi, year } = record.source;
    expect(title).not.toBe('');
    if (title !== 'common practice, no source')
      expect([locator, doi, year].some((part) => part !== undefined)).toBe(true);
    expect(['read', 'second-hand', 'memory']).toContain(record.evidence);
  });

  it('have an id each', () => {
    expect(new Set(statements.map(({ id }) => id)).size).toBe(statements.length);
  });

  it('throws for one that is not there', () => {
    expect(() => statement('caution.none')).toThrow('no statement “caution.none”');
  });
});
