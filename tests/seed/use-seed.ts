/** Runs before each test file: every property of fast-check draws its examples with the seed of the run. */
import fc from 'fast-check';
import { inject } from 'vitest';

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: inject('seed') });
