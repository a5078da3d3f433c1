import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { generate } from './generate.mjs'
import { installed, root, run, step } from './process.mjs'

const sources = [
  ...['app', 'lib', 'prisma', 'public'],
  ...['next.config.mjs', 'proxy.ts', 'instrumentation.ts', 'tsconfig.json', 'package.json', 'package-lock.json'],
]
const mark = join(root, '.next', 'brasstag-built-from')

function* filesIn(path) {
  const full = join(root, path)
  if (!existsSync(full)) return
  const entries = readdirSync(full, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))
  for (const entry of entries) {
    const inner = join(path, entry.name)
    if (inner === join('prisma', 'generated')) continue
    if (entry.isDirectory()) yield* filesIn(inner)
    else if (entry.isFile()) yield inner
  }
}

/** One hash over the names and the contents of everything that a build is made from. */
function fingerprint() {
  const hash = createHash('sha256')
  for (const source of sources) {
    const files = source.includes('.') ? [source] : [...filesIn(source)]
    for (const file of files) {
      const content = readFileSync(join(root, file))
      hash.update(`${file}\n${content.length}\n`).update(content)
    }
  }
  return hash.digest('hex')
}

export const buildEnv = { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' }

/**
 * Says of React's script, the largest of those that every page loads, that a browser may compile all of it while it comes,
 * beside the page. It would else compile each function when it is first called, and the page waits for that: some 40 ms of
 * a fast processor. A browser that does not know the comment leaves it. The other scripts are better left: on two cores
 * their compiling takes the processor from the page's own layout.
 */
function compileAhead() {
  const { rootMainFiles = [] } = JSON.parse(readFileSync(join(root, '.next', 'build-manifest.json'), 'utf8'))
  const files = rootMainFiles.map((name) => join(root, '.next', name))
  const largest = files.toSorted((a, b) => statSync(b).size - statSync(a).size)[0]
  // A page works without it.
  if (largest) writeFileSync(largest, `//# allFunctionsCalledOnLoad\n${readFileSync(largest, 'utf8')}`)
}

/** Generates the clients and builds the app, each only when what it is made from changed. */
export async function build() {
  await generate()
  const from = fingerprint()
  if (existsSync(mark) && readFileSync(mark, 'utf8') === from) return
  rmSync(mark, { force: true })
  await step('Building (about a minute, only when something changed)', () =>
    run(process.execPath, [installed('next', 'dist', 'bin', 'next'), 'build'], { env: buildEnv }),
  )
  compileAhead()
  const { buildWorker } = await import('./build-worker.mjs')
  await buildWorker()
  const { bundle } = await import('./bundle.mjs')
  await bundle('lib/cli/prepare.ts', '.next/commands')
  writeFileSync(mark, from)
}
