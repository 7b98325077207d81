import { describe, expect, it } from 'vitest';
import { provenanceLine } from '#lib/charts/provenance.ts';
import { paperHeadRule } from '#lib/sheets/frame/paper-head.svelte.ts';

const day = new Date(2027, 2, 1);
const of = (title: string, invented: boolean) => ({ title, invented, locale: 'en-GB' });

describe('the line that goes with pages and pictures', () => {
  it('names workbook and day, and says so where the figures are invented', () => {
    expect(provenanceLine(of('North', true), day)).toBe(
      'North · 1 March 2027 · invented figures, evidence for nothing · planning support, not clinical guidance'
    );
    expect(provenanceLine(of('North', false), day)).not.toContain('invented');
  });

  it.each(['He said "go"', 'C:\\new', 'a\nb', '"; } @page { display: none } /*'])(
    'no title ends the string of the page rule: %j',
    (title) => {
      const rule = paperHeadRule(of(title, true), day);
      const inside = /content: "([^"\\\n]|\\[0-9a-f]+ )*";/.exec(rule)?.[0] ?? '';
      expect(inside).toContain('invented figures');
      const read = inside.replace(/\\([0-9a-f]+) /g, (_, code: string) =>
        String.fromCodePoint(parseInt(code, 16))
      );
      expect(read).toContain(title);
    }
  );
});
