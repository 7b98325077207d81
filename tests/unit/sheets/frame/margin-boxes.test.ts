import { expect, it } from 'vitest';
import { cssString, marginBoxes } from '#lib/sheets/frame/margin-boxes.ts';

it('a title ends neither its string nor its rule, whatever it says', () => {
  const text = cssString('A "B" \\ } </style>\nC');
  expect(text.slice(1, -1)).not.toMatch(/["\n<]/);
  expect(text).toBe('"A \\22 B\\22  \\5c  } \\3c /style>\\a C"');
});

it('each page has whose figures these are, the day, and its number of all', () => {
  const css = marginBoxes({
    head: 'Our theatres · Report',
    date: '3 May 2026',
    foot: 'Reference set 2026-1'
  });
  expect(css).toContain('@top-left { content: "Our theatres · Report"');
  expect(css).toContain('@top-right { content: "3 May 2026"');
  expect(css).toContain('@bottom-left { content: "Reference set 2026-1"');
  expect(css).toContain('counter(page) " of " counter(pages)');
});
