/** Chooses the seed once for all test files of a run, and says which one it is. */
import type { TestProject } from 'vitest/node';
import { chosenSeed, usualSeed } from './chosen-seed.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    seed: number;
  }
}

export default function saySeed({ provide }: TestProject): void {
  const seed = chosenSeed(process.env['SEED']);
  provide('seed', seed);
  const others =
    seed === usualSeed
      ? 'SEED=random takes another'
      : `SEED=${seed} repeats this run; without it, the usual one`;
  console.log(`Random examples are drawn with seed ${seed} (${others}).`);
}
