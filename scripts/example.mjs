/** `npm run example`: writes the example workbook anew, after a change of the demo or of a file's format. */
import './supported-node.mjs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundle } from './bundle.mjs';
import { projectFolder } from './project-folder.mjs';
import { putWholeFile } from './put-whole-file.mjs';
import { reportSetUpError, setUpDependencies } from './set-up.mjs';

const file = 'static/examples/invented-hospital.json';
try {
  await setUpDependencies();
  const script = await bundle({
    entry: 'src/lib/batch/example-file.ts',
    sources: ['src/lib'],
    withPackages: true
  });
  const { exampleFile } = await import(pathToFileURL(script).href);
  await putWholeFile(path.join(projectFolder, file), exampleFile());
  console.log(`${file} is the demo as it stands.`);
} catch (error) {
  reportSetUpError(error);
}
