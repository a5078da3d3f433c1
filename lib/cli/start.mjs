import './check-node.mjs'
import { existsSync } from 'node:fs'
import { get } from 'node:http'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { build, buildEnv } from './build.mjs'
import { firstPages } from './first-pages.mjs'
import { compilePackages, unpackPackages } from './install.mjs'
import { CommandFailed, installed, passOn, run, start } from './process.mjs'
import { makeFolder, refuseTakenPort, sessionSecret, settingsOf } from './settings.mjs'
import { welcome } from './welcome.mjs'

/**
 * `start.mjs demo` or `start.mjs shop`: from a bare clone to a running server. Plain Node, because it runs before any
 * package is there. `--built` leaves out installing and building, for whoever has just done both.
 */
const [mode, ...flags] = process.argv.slice(2)

const exitCodes = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 }
let stoppedBy = null

function stop(signal) {
  if (!stoppedBy) setTimeout(() => passOn('SIGKILL'), 15_000).unref() // whoever does not listen is not waited for
  stoppedBy ??= signal
  if (!passOn(signal)) process.exit(exitCodes[signal])
}

for (const signal of Object.keys(exitCodes)) process.on(signal, () => stop(signal))

/** npm, told to end, ends without telling us: when it has gone, so do we. */
function endWithNpm() {
  if (!process.env.npm_lifecycle_event) return
  const parent = process.ppid
  setInterval(() => process.ppid !== parent && stop('SIGTERM'), 500).unref()
}

async function prepare(settings, env) {
  const answer = await run(
    process.execPath,
    ['--conditions=react-server', '--enable-source-maps', '.next/commands/prepare.mjs', settings.mode],
    { env, keep: 'answer' },
  )
  return JSON.parse(answer)
}

/** A restore that was killed after it had been decided is carried to its end before anything else looks at the folder. */
async function endRestore({ folder }) {
  if (!existsSync(join(folder, 'restore-under-way.json'))) return
  await run(process.execPath, ['--conditions=react-server', '--import', 'tsx', 'lib/cli/restore.ts', '--carry-on'], {
    env: { ...buildEnv, BRASSTAG_DATA: folder },
  })
}

/**
 * A page makes megabytes that nobody needs after it. With room for them (MB; 16 unless said) they are gone before the slower
 * collection of what is old has to look at them: the counter takes three quarters of the time.
 */
const roomForNew = '--max-semi-space-size=64'

/** Answers when the server does; ends with the server's own exit code when it does not get that far. */
async function serve(settings, env) {
  const { host, port, here } = settings
  const server = start(
    process.execPath,
    [roomForNew, installed('next', 'dist', 'bin', 'next'), 'start', '-H', host, '-p', String(port)],
    {
      env,
      stdio: ['ignore', 'inherit', 'inherit'],
    },
  )
  const ended = new Promise((resolve, reject) => {
    server.on('error', reject)
    server.on('close', (code, signal) => resolve(code ?? exitCodes[signal] ?? 1))
  })
  const isRunning = () => server.exitCode === null && server.signalCode === null
  const answering = untilHealthy(`${here}/api/health`, isRunning)
  return { answering, ended, isRunning }
}

async function untilHealthy(url, isRunning) {
  while (isRunning()) {
    if ((await statusOf(url)) === 200) return true
    await pause(50)
  }
  return false
}

/** One after the other, so that whoever comes meanwhile waits for one of them at the most. */
async function loadFirstPages({ here }, isRunning) {
  for (const page of firstPages) if (isRunning() && !stoppedBy) await statusOf(`${here}${page}`)
}

/** 0 while it is not listening yet. No connection is kept: one that is open holds up the server's end for seconds. */
function statusOf(url) {
  return new Promise((resolve) => {
    const request = get(url, { agent: false }, (answer) => {
      answer.resume().on('close', () => resolve(answer.statusCode ?? 0))
    })
    request.on('error', () => resolve(0))
  })
}

async function main() {
  if (mode !== 'demo' && mode !== 'shop') throw new Error('Say which: npm start (the demo) or npm run shop.')
  endWithNpm()
  const settings = settingsOf(mode)
  await refuseTakenPort(settings)
  if (!flags.includes('--built')) {
    await unpackPackages()
    // One core each: nothing of the build opens a database.
    await Promise.all([compilePackages(), build()])
  }
  makeFolder(settings)
  await endRestore(settings)
  const env = {
    ...buildEnv,
    BRASSTAG_DATA: settings.folder,
    NEXTAUTH_SECRET: sessionSecret(settings),
    NEXTAUTH_URL: settings.address,
  }
  const prepared = await prepare(settings, env)
  if (stoppedBy) return exitCodes[stoppedBy]
  const { answering, ended, isRunning } = await serve(settings, env)
  if (await answering) {
    process.stdout.write(welcome(settings, prepared))
    void loadFirstPages(settings, isRunning)
  }
  return ended
}

try {
  process.exit(await main())
} catch (error) {
  // A command that failed has said why itself; the rest is for the person who started us.
  if (!stoppedBy && !(error instanceof CommandFailed)) process.stderr.write(`${error.message}\n`)
  passOn('SIGTERM') // what ran beside it
  process.exit(stoppedBy ? exitCodes[stoppedBy] : (error.code > 0 && error.code) || 1)
}
