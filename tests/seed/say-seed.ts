/** Chooses the seed once for all test files of a run, and says which one it is. */
import type { TestProject } from 'vitest/node';
import { chosenSeed, usualSeed } from './chosen-seed.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    seed: number;
  }
}

/** The environment variable that holds the seed once it is chosen: each group of test files asks for it. */
const seedOfRun = 'SEED_OF_THIS_RUN';

export default function saySeed({ provide }: TestProject): void {
  const chosen = process.env[seedOfRun];
  const seed = chosen === undefined ? chosenSeed(process.env['SEED']) : Number(chosen);
  provide('seed', seed);
  if (chosen !== undefined) return;
  process.env[seedOfRun] = String(seed);
  const others =
    seed === usualSeed
      ? 'SEED=random takes another'
      : `SEED=${seed} repeats this run; without it, the usual one`;
  console.log(`Random examples are drawn with seed ${seed} (${others}).`);
}
