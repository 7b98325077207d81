/**
 * Ends the process with a clear sentence where Node is older than the tools can run on. A command imports this file
 * before anything else, and it keeps to what an old Node understands, or the sentence would never be reached.
 */
const supported = ['20.19', '22.13', '24.0'];

/**
 * @param {string} version of Node, such as `20.19.3`
 * @returns {boolean} whether the build and test tools run on it: 20.19 and up within 20, 22.13 and up within 22, or
 *   24 and newer (the odd ones between are past their support, and the tools refuse them)
 */
export function isSupportedNode(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return supported.some((lowest, index) => {
    const [lowestMajor = 0, lowestMinor = 0] = lowest.split('.').map(Number);
    const isNewest = index === supported.length - 1;
    return (isNewest && major > lowestMajor) || (major === lowestMajor && minor >= lowestMinor);
  });
}

if (!isSupportedNode(process.versions.node)) {
  console.error(
    `Vapour Ledger needs Node 20.19 or newer (20.19 and up, 22.13 and up, or 24 and up); this is Node ` +
      `${process.versions.node}. Install a supported one from https://nodejs.org and run the command again.`
  );
  process.exit(1);
}
