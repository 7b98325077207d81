import { spawn } from 'node:child_process';
import { projectFolder } from './project-folder.mjs';

/**
 * Runs a command to its end, in the project's folder unless told another. It gets no input, so that nothing can wait for an answer.
 *
 * @param {string} command
 * @param {readonly string[]} args
 * @param {object} [options]
 * @param {'through' | 'to-errors' | 'on-failure' | 'to-nowhere'} [options.output] `to-errors` shows all that it prints
 *   on standard error, for commands whose own standard output carries results; `on-failure` does so only where it fails
 * @param {Record<string, string>} [options.env]
 * @param {string} [options.cwd]
 * @param {boolean} [options.shell]
 * @returns {Promise<number>} its exit status; 127 where it could not be started, 1 where a signal ended it
 */
export function runCommand(
  command,
  args,
  { output = 'through', env = {}, cwd = projectFolder, shell = false } = {}
) {
  return new Promise((resolve) => {
    /** @type {Record<string, import('node:child_process').StdioOptions>} */
    const stdio = {
      through: ['ignore', 'inherit', 'inherit'],
      'to-errors': ['ignore', 2, 'inherit'],
      'on-failure': ['ignore', 'pipe', 'pipe'],
      'to-nowhere': 'ignore'
    };
    const child = spawn(command, args, {
      cwd,
      env: { ...process.env, ...env },
      stdio: stdio[output] ?? 'inherit',
      shell
    });
    /** @type {Buffer[]} */
    const held = [];
    child.stdout?.on('data', (chunk) => held.push(chunk));
    child.stderr?.on('data', (chunk) => held.push(chunk));
    child.on('error', (error) => {
      console.error(`${command} could not be started: ${error.message}`);
      resolve(127);
    });
    child.on('close', (status) => {
      if (status !== 0) process.stderr.write(Buffer.concat(held));
      resolve(status ?? 1);
    });
  });
}
