import { expect, test } from 'vitest';
import { FirstUses } from '#lib/sheets/parts/first-uses.svelte.ts';
import type { GlossaryEntry } from '#lib/sheets/parts/glossary.ts';

const entry = (term: string, also: readonly string[] = []): GlossaryEntry => ({
  term,
  also,
  words: `What ${term} is.`,
  sheets: []
});
const flow = entry('fresh gas flow');
const worth = entry('NPV', ['net present value']);
const block = entry('neuromuscular block', ['neuromuscular blocker']);

const marked = (uses: FirstUses, owner: object, ...texts: readonly string[]) =>
  uses
    .claim(owner, texts)
    .map((pieces) => pieces.map(({ text, entry: of }) => (of === null ? text : [text])));

test('a word is marked at its first use, with the letters that stand there, and never again', () => {
  const uses = new FirstUses([worth, flow]);
  expect(marked(uses, {}, 'Fresh gas flows, the net present value and the NPV.')).toEqual([
    [['Fresh gas flows'], ', the ', ['net present value'], ' and the NPV.']
  ]);
  expect(marked(uses, {}, 'The fresh gas flow')).toEqual([['The fresh gas flow']]);
});

test('the pieces put together are the text', () => {
  for (const text of ['', 'NPV', 'NPV, fresh gas flow', 'nothing of it', ' a fresh gas flow ']) {
    const [pieces = []] = new FirstUses([worth, flow]).claim({}, [text]);
    expect(pieces.map((piece) => piece.text).join('')).toBe(text);
  }
});

test('only whole words count, the longest way of writing too', () => {
  expect(marked(new FirstUses([worth]), {}, 'an NPVX, a ΔNPV')).toEqual([['an NPVX, a ΔNPV']]);
  expect(marked(new FirstUses([block]), {}, 'a neuromuscular blocker')).toEqual([
    ['a ', ['neuromuscular blocker']]
  ]);
});

test('of several texts of one place, the first that has the word', () => {
  expect(marked(new FirstUses([worth]), {}, 'none', 'the NPV', 'the NPV')).toEqual([
    ['none'],
    ['the ', ['NPV']],
    ['the NPV']
  ]);
});

test('a place that asks again keeps its word, and sets it free when its text has it no more or it goes', () => {
  const uses = new FirstUses([worth]);
  const [first, second] = [{}, {}];
  expect(marked(uses, first, 'NPV')).toEqual([[['NPV']]]);
  expect(marked(uses, first, 'the NPV')).toEqual([['the ', ['NPV']]]);
  expect(marked(uses, second, 'NPV')).toEqual([['NPV']]);
  marked(uses, first, 'gone');
  expect(marked(uses, second, 'NPV')).toEqual([[['NPV']]]);
  uses.release(second);
  expect(marked(uses, first, 'NPV')).toEqual([[['NPV']]]);
});
