/** Runs one bundled bench, given by its path, and hands its rows to the process that asked. */
import { pathToFileURL } from 'node:url';

const [, , script = ''] = process.argv;
const { bench } = await import(pathToFileURL(script).href);
process.send?.(await bench());
process.disconnect?.();
