import { spawn } from 'node:child_process'
import { join } from 'node:path'

/** The root of the project, wherever the command was started from. */
export const root = join(import.meta.dirname, '..', '..')

/** A command that did not end well. Carries what it printed when that was kept back. */
export class CommandFailed extends Error {
  constructor(command, code, output) {
    super(`${command} ended with ${code}.${output ? `\n${output}` : ''}`)
    this.code = typeof code === 'number' ? code : 1
  }
}

/**
 * Runs a command to its end. Its output is shown as it comes; with `quiet` it is kept back and shown only on failure.
 * `onStart` receives the child, so that a signal can be handed on to it.
 */
export function run(command, args, { env = process.env, cwd = root, quiet = false, onStart } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd,
      env,
      stdio: ['ignore', quiet ? 'pipe' : 'inherit', quiet ? 'pipe' : 'inherit'],
    })
    onStart?.(child)
    const kept = []
    child.stdout?.on('data', (piece) => kept.push(piece))
    child.stderr?.on('data', (piece) => kept.push(piece))
    child.on('error', reject)
    child.on('close', (code, signal) => {
      if (code === 0) resolve()
      else
        reject(
          new CommandFailed([command, ...args].join(' '), code ?? signal, Buffer.concat(kept).toString()),
        )
    })
  })
}
