/** `npm start`: does the set-up that is missing, then serves the app and prints its address. */
import './supported-node.mjs';
import os from 'node:os';
import util from 'node:util';
import { addresses } from './addresses.mjs';
import { buildFolder, reportSetUpError, setUpBuild, setUpDependencies } from './set-up.mjs';
import { createStaticServer, listen } from './static-server.mjs';

const usage = `Usage: npm start -- [--port N] [--host NAME]
  --port N     port to serve at, 0 for any free one (default: PORT, else 4870); the next free one if it is taken
  --host NAME  who can reach it (default: HOST, else 127.0.0.1, this computer alone; 0.0.0.0 for its network)`;

/** A port of our own: what a browser keeps belongs to the address, and other projects use the usual ones. */
const usualPort = '4870';

const wanted = readOptions();
if (wanted) {
  try {
    await setUpDependencies();
    await setUpBuild();
    await serve(wanted);
  } catch (error) {
    reportSetUpError(error);
  }
}

/** @returns {{ host: string, port: number } | null} null where the process is to end */
function readOptions() {
  try {
    const { values } = util.parseArgs({
      options: { port: { type: 'string' }, host: { type: 'string' }, help: { type: 'boolean', short: 'h' } }
    });
    if (values.help) {
      console.log(usage);
      return null;
    }
    const port = values.port ?? (process.env['PORT'] || usualPort);
    if (!/^\d{1,5}$/.test(port) || Number(port) > 65535) {
      throw new Error(`--port: ${JSON.stringify(port)} is not a port; a whole number from 0 to 65535 is`);
    }
    return { port: Number(port), host: values.host ?? (process.env['HOST'] || '127.0.0.1') };
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : error}\n${usage}`);
    process.exitCode = 2;
    return null;
  }
}

/** @param {{ host: string, port: number }} place */
async function serve({ host, port }) {
  const server = createStaticServer(buildFolder);
  try {
    const actualPort = await listen(server, { host, port });
    if (port !== 0 && actualPort !== port) {
      console.log(
        `Port ${port} is taken, so this is served at ${actualPort}. Browsers keep workbooks by address: those made ` +
          `at ${port} are only to be seen there.`
      );
    }
    const [first, ...others] = addresses({ host, port: actualPort }, os.networkInterfaces());
    console.log(`Vapour Ledger is at ${first} (Ctrl+C ends it)`);
    if (others.length > 0) console.log(`Other computers of the network find it at ${others.join(' or ')}`);
  } catch (error) {
    console.error(
      `The app cannot be served at ${host}, port ${port}: ${error instanceof Error ? error.message : error}`
    );
    process.exitCode = 1;
    return;
  }
  const end = () => {
    server.close();
    server.closeAllConnections();
  };
  process.once('SIGINT', end).once('SIGTERM', end).once('SIGHUP', end);
}
