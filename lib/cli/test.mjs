import './check-node.mjs'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from './build.mjs'
import { browserIsOfTheSystem, installBrowser } from './browser.mjs'
import { installPaperTools } from './paper-tools.mjs'
import { generate } from './generate.mjs'
import { compilePackages, unpackPackages } from './install.mjs'
import { CommandFailed, installed, passOn, run } from './process.mjs'

/**
 * Everything that must hold. Once something does not, nothing more begins; what has begun goes on to its end. The last
 * line counts every test that was run; a stage that is one command counts as one test.
 */
const env = { ...process.env, NEXT_TELEMETRY_DISABLED: '1', CI: '1' }
const node = (args, more = {}) => run(process.execPath, args, { env: { ...env, ...more } })
/** What it says is shown when it fails: others run at the same time. */
const quietly = (...args) => run(process.execPath, args, { env, keep: 'quiet' })

const reports = mkdtempSync(join(tmpdir(), 'brasstag-reports-'))
const reportOf = (name) => JSON.parse(readFileSync(join(reports, `${name}.json`), 'utf8'))

/** A command that either goes well or does not. */
const one = (work) => async () => {
  await work()
  return { passed: 1, failed: 0 }
}

/** What the framework declares (routes, styles) is generated and not in git, so a fresh clone has to make it first. */
const declarations = () => quietly(installed('next', 'dist', 'bin', 'next'), 'typegen')

/** Tests that are left out count as failed: nothing is skipped. */
async function unit() {
  const report = `--outputFile.json=${join(reports, 'unit.json')}`
  return counted(
    () => node([installed('vitest', 'vitest.mjs'), 'run', '--reporter=default', '--reporter=json', report]),
    () => {
      const { success, numTotalTests, numPassedTests } = reportOf('unit')
      return { success, passed: numPassedTests, failed: numTotalTests - numPassedTests }
    },
  )
}

async function browser() {
  const report = { PLAYWRIGHT_JSON_OUTPUT_FILE: join(reports, 'browser.json'), BRASSTAG_E2E_FILLED: filled }
  return counted(
    () => node([installed('@playwright', 'test', 'cli.js'), 'test', '--reporter=list,json'], report),
    () => {
      const { errors, stats } = reportOf('browser')
      const failed = stats.unexpected + stats.flaky + stats.skipped
      return { success: errors.length === 0, passed: stats.expected, failed }
    },
  )
}

/** A run that failed without a failing test (a file that does not load, say) has failed all the same. */
async function counted(work, read) {
  const ended = await work().then(
    () => true,
    (error) => {
      if (error instanceof CommandFailed) return false
      throw error
    },
  )
  const { success, passed, failed } = read()
  const good = ended && success && passed > 0
  return { passed, failed: good ? failed : Math.max(failed, 1) }
}

const filled = join(reports, 'filled')

/** As `e2e/start-demo.ts` finds it: the shop, the same without what stands ready for the tests, and what stands ready. */
async function fillDemo() {
  const args = ['--conditions=react-server', '--import', 'tsx', 'tests/setup/fill-demo.ts', join(filled, 'spare')]
  const { DATABASE_URL: _database, ...rest } = env
  mkdirSync(join(filled, 'demo'), { recursive: true })
  const prepared = await run(process.execPath, args, {
    env: { ...rest, BRASSTAG_DATA: join(filled, 'demo') },
    keep: 'answer',
  })
  writeFileSync(join(filled, 'prepared.json'), prepared)
}

const format = () => quietly(installed('prettier', 'bin', 'prettier.cjs'), '--check', '.')
const lint = () => quietly(installed('eslint', 'bin', 'eslint.js'), '.', '--max-warnings', '0')
const types = () => quietly(installed('typescript-7', 'bin', 'tsc'), '--noEmit')

/**
 * Name; what has to go well before; work. Format, lint, types, a compiler and the filling of a shop keep one core busy each,
 * and a build does not fill two; so they go together. The tests use both cores.
 */
const stages = [
  ['packages', [], one(unpackPackages)],
  ['browser', browserIsOfTheSystem ? [] : ['packages'], one(installBrowser)],
  ['paper tools', ['browser'], one(installPaperTools)],
  ['clients', ['packages'], one(generate)],
  ['packages that come as source', ['packages'], one(compilePackages)],
  ['production build', ['clients'], one(build)],
  // The build clears it away.
  ['what the framework declares', ['production build'], one(declarations)],
  ['format', ['packages'], one(format)],
  ['lint, layers included', ['clients', 'format'], one(lint)],
  ['types', ['what the framework declares'], one(types)],
  ['a shop for the browser tests', ['clients', 'packages that come as source'], one(fillDemo)],
  ['unit and database tests', ['lint, layers included', 'types', 'a shop for the browser tests', 'paper tools'], unit],
  ['browser tests', ['unit and database tests'], browser],
]

const total = { passed: 0, failed: 0 }

async function runStage(name, work) {
  const from = Date.now()
  process.stdout.write(`\n── ${name}\n`)
  const { passed, failed } = await work().catch((error) => {
    process.stdout.write(`${error instanceof CommandFailed ? error.message : error.stack}\n`)
    return { passed: 0, failed: 1 }
  })
  total.passed += passed
  total.failed += failed
  process.stdout.write(`── ${name}: ${failed ? 'FAILED' : 'good'}, ${Math.round((Date.now() - from) / 1000)} s\n`)
}

async function main() {
  const ended = new Map()
  const stage = async (name, before, work) => {
    await Promise.all(before.map((other) => ended.get(other)))
    if (total.failed === 0) await runStage(name, work)
  }
  for (const [name, before, work] of stages) ended.set(name, stage(name, before, work))
  await Promise.all(ended.values())
  process.stdout.write(`\n${total.passed} passed, ${total.failed} failed\n`)
  return total.failed === 0 && total.passed > 0 ? 0 : 1
}

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    passOn(signal)
    rmSync(reports, { recursive: true, force: true })
    process.exit(1)
  })
}

process.exitCode = await main().finally(() => rmSync(reports, { recursive: true, force: true }))
