/** A plug-in of the mutation library that lets the mutants of a sample through, and no other. */
import { readFileSync } from 'node:fs';
import { CheckStatus } from '@stryker-mutator/api/check';
import { declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { keyOf } from './mutant-sample.mjs';

/** The environment variable that names the file with the keys of the sample, a JSON list. */
export const sampleVariable = 'MUTANT_SAMPLE';

/** @returns {import('@stryker-mutator/api/check').Checker} */
function sampledOnly() {
  /** @type {Set<string>} */
  let sample = new Set();
  return {
    async init() {
      sample = new Set(JSON.parse(readFileSync(process.env[sampleVariable] ?? '', 'utf8')));
    },
    /** @param {import('@stryker-mutator/api/core').Mutant[]} mutants */
    async group(mutants) {
      return [mutants.map(({ id }) => id)];
    },
    /** @param {import('@stryker-mutator/api/core').Mutant[]} mutants */
    async check(mutants) {
      return Object.fromEntries(
        mutants.map((mutant) => [
          mutant.id,
          sample.has(keyOf(mutant))
            ? { status: CheckStatus.Passed }
            : { status: CheckStatus.CompileError, reason: 'Not in the sample.' }
        ])
      );
    }
  };
}

// The library makes a plug-in by handing it what it names; this one needs nothing.
sampledOnly.inject = tokens();

export const strykerPlugins = [declareFactoryPlugin(PluginKind.Checker, 'sample', sampledOnly)];
