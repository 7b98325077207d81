import { spawn } from 'node:child_process';
import { projectFolder } from './project-folder.mjs';

/**
 * Runs a command in the project's folder to its end. It gets no input, so that nothing can wait for an answer.
 *
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ output?: 'through' | 'to-errors' | 'on-failure', env?: Record<string, string>, shell?: boolean }} [options]
 *   `to-errors` shows all that it prints on standard error, for commands whose own standard output carries results;
 *   `on-failure` does so only where it fails
 * @returns {Promise<number>} its exit status; 127 where it could not be started, 1 where a signal ended it
 */
export function runCommand(command, args, { output = 'through', env = {}, shell = false } = {}) {
  return new Promise((resolve) => {
    const isHeld = output === 'on-failure';
    const child = spawn(command, args, {
      cwd: projectFolder,
      env: { ...process.env, ...env },
      stdio: isHeld
        ? ['ignore', 'pipe', 'pipe']
        : ['ignore', output === 'to-errors' ? 2 : 'inherit', 'inherit'],
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
