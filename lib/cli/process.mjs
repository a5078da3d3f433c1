import { spawn } from 'node:child_process'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The root of the project, wherever the command was started from. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..')

/** A file of an installed package, to be run by Node itself. */
export const installed = (...path) => join(root, 'node_modules', ...path)

/** A command that did not end well; its output is here when it was kept back. */
export class CommandFailed extends Error {
  constructor(command, code, output) {
    super(`${command} ended with ${code}.${output ? `\n${output}` : ''}`)
    this.code = typeof code === 'number' ? code : 1
  }
}

const running = new Set()

/** Hands a signal on to every command that is running. */
export function passOn(signal) {
  for (const child of running) child.kill(signal)
  return running.size > 0
}

/** Starts a command and forgets nothing of it: it gets our signals while it runs. */
export function start(command, args, options) {
  const child = spawn(command, args, { cwd: root, ...options })
  running.add(child)
  child.on('close', () => running.delete(child))
  child.on('error', () => running.delete(child))
  return child
}

/**
 * Runs a command to its end and gives what it wrote to stdout when `keep` says so. `show`: everything is shown as it
 * comes. `quiet`: nothing is, unless it fails. `answer`: stdout is kept as the answer, stderr is shown.
 */
export function run(command, args, { env = process.env, keep = 'show' } = {}) {
  const stdio = {
    show: ['ignore', 'inherit', 'inherit'],
    quiet: ['ignore', 'pipe', 'pipe'],
    answer: ['ignore', 'pipe', 'inherit'],
  }
  return new Promise((resolve, reject) => {
    const child = start(command, args, { env, stdio: stdio[keep] })
    const kept = []
    child.stdout?.on('data', (piece) => kept.push(piece))
    child.stderr?.on('data', (piece) => kept.push(piece))
    child.on('error', reject)
    child.on('close', (code, signal) => {
      const output = Buffer.concat(kept).toString()
      if (code === 0) resolve(output)
      else reject(new CommandFailed([command, ...args].join(' '), code ?? signal, keep === 'quiet' ? output : ''))
    })
  })
}

/** Says what is being done, does it, and says how long it took. Two may go on at once: each says what it was. */
export async function step(words, work) {
  process.stdout.write(`• ${words} …\n`)
  const from = Date.now()
  const result = await work()
  process.stdout.write(`  ${words.split(' (')[0]}: done in ${Math.round((Date.now() - from) / 1000)} s\n`)
  return result
}
