import { describe, expect, test } from 'vitest';
import { carriesWorkbook, fragmentOf, workbookOfFragment } from '#lib/files/share-link.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const fragment = async (workbook: Workbook): Promise<string> => {
  const made = await fragmentOf(workbook);
  if ('sentence' in made) throw new Error(made.sentence);
  return made.fragment;
};
const refusal = async (link: string): Promise<string> => {
  const parsed = await workbookOfFragment(link);
  return parsed.kind === 'refused' ? (parsed.issues[0]?.sentence ?? '') : parsed.kind;
};

describe('a link that carries a workbook', () => {
  test('gives the same workbook, texts that are not in force included', async () => {
    const workbook = { ...demoWorkbook(), keptTexts: { 'caseMix.hip.minutes': 'läng “er”' } };
    const link = await fragment(workbook);
    expect(carriesWorkbook(link)).toBe(true);
    expect(link).toMatch(/^#workbook=[\w.-]+$/);
    expect(await workbookOfFragment(link)).toEqual({ kind: 'workbook', workbook, notes: [] });
  });

  test('cut short anywhere, or changed in a letter, gives a sentence and no workbook', async () => {
    const link = await fragment(demoWorkbook());
    for (const part of [0.1, 0.5, 0.9, 0.999])
      expect(await refusal(link.slice(0, Math.floor(link.length * part)))).toMatch(
        /cut short or was changed/
      );
    const at = link.length - 40;
    const other = link[at] === 'A' ? 'B' : 'A';
    expect(await refusal(link.slice(0, at) + other + link.slice(at + 1))).toMatch(/cut short or was changed/);
  });

  test('forged with a sound checksum, gives what is wrong with it', async () => {
    expect(await refusal(forged(new TextEncoder().encode('no deflate')))).toMatch(/carries no workbook/);
    const workbook = { ...demoWorkbook(), currency: 'gold' } as Workbook;
    expect(await refusal(await fragment(workbook))).toMatch(/“gold” was given/);
  });

  test('that unpacks to far more than a workbook is not unpacked', async () => {
    const stream = new Blob([new Uint8Array(50_000_000)])
      .stream()
      .pipeThrough(new CompressionStream('deflate-raw'));
    const bomb = new Uint8Array(await new Response(stream).arrayBuffer());
    expect(await refusal(forged(bomb))).toMatch(/too large for a link/);
  });

  test('is not made of a workbook that no link takes', async () => {
    const row = demoWorkbook().caseMix[0]!;
    const caseMix = Array.from({ length: 2000 }, (_, at) => ({
      ...row,
      id: `case-${at}`,
      name: `Group ${at} ${(at * 7919) % 1000}`,
      minutes: 10 + ((at * 104729) % 4000) / 7
    }));
    expect(await fragmentOf({ ...demoWorkbook(), caseMix })).toEqual({
      sentence: expect.stringMatching(/too large for a link: save it as a file/)
    });
  });
});

/** A fragment of any bytes whose checksum holds, as somebody would make it who knows how. */
function forged(bytes: Uint8Array): string {
  const letters = Buffer.from(bytes).toString('base64url');
  let hash = 0x811c9dc5;
  for (const sign of letters) hash = Math.imul(hash ^ sign.charCodeAt(0), 0x01000193);
  return `#workbook=${(hash >>> 0).toString(16).padStart(8, '0')}.${letters}`;
}
