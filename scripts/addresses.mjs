/**
 * Where a server can be opened. One that listens at every address of the computer is named by each of them: `0.0.0.0`
 * itself leads nowhere from another computer.
 *
 * @param {{ host: string, port: number }} place
 * @param {ReturnType<typeof import('node:os').networkInterfaces>} interfaces of the computer
 * @returns {readonly string[]} the one for this computer first
 */
export function addresses({ host, port }, interfaces) {
  const at = (/** @type {string} */ name) => `http://${name.includes(':') ? `[${name}]` : name}:${port}/`;
  if (host !== '0.0.0.0' && host !== '::') return [at(host)];
  const others = Object.values(interfaces)
    .flatMap((each) => each ?? [])
    // An IPv6 address of one link alone needs the name of the link with it, which browsers do not read.
    .filter(({ internal, address }) => !internal && !/^fe80:/i.test(address))
    .filter(({ family }) => host === '::' || family === 'IPv4')
    .map(({ address }) => at(address));
  return [at('127.0.0.1'), ...new Set(others)];
}
