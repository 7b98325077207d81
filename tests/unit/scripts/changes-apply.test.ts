/** The list of `npm run mutation` must not rot: each change of it still applies to the sources as they are today. */
import ts from 'typescript';
import { expect, test } from 'vitest';
import { applyChange } from '../../../scripts/apply-change.mjs';
import { projectFolder } from '../../../scripts/project-folder.mjs';
import { readSources } from '../../../scripts/read-sources.mjs';
import { changes } from '../../mutation/changes.mjs';

const sources = readSources(projectFolder);

test.each(changes)('is found in exactly one place, and leaves what can be read: $rule', (change) => {
  const made = applyChange(sources, change);
  expect(made).not.toHaveProperty('problem');
  if ('problem' in made) return;
  expect(made.changed.size).toBeGreaterThan(0);
  for (const [file, text] of made.changed) {
    expect(text).not.toBe(sources.get(file));
    const { diagnostics = [] } = ts.transpileModule(text, { reportDiagnostics: true, fileName: file });
    expect(diagnostics.map(({ messageText }) => messageText)).toEqual([]);
  }
});

test('no rule stands twice in the list', () => {
  const rules = changes.map(({ rule }) => rule);
  expect(rules).toEqual([...new Set(rules)]);
});
