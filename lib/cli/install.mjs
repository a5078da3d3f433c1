import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { installed, root, run, step } from './process.mjs'

const packagesIn = (file) => JSON.parse(readFileSync(file, 'utf8')).packages

/**
 * Whether what is installed is what the lock file says, by npm's own record of it, which it writes when an
 * installation has ended well. Packages for other machines may be missing.
 */
export function packagesAreInstalled() {
  const record = installed('.package-lock.json')
  if (!existsSync(record)) return false
  const wanted = packagesIn(join(root, 'package-lock.json'))
  const there = packagesIn(record)
  return Object.entries(wanted).every(([path, { version, optional }]) => {
    if (path === '') return true
    return there[path] ? there[path].version === version : optional === true
  })
}

/** There while packages are unpacked but not yet compiled: npm's own record does not tell the two apart. */
const uncompiled = join(root, '.brasstag', 'packages-to-compile')

export async function unpackPackages() {
  if (packagesAreInstalled()) return
  mkdirSync(dirname(uncompiled), { recursive: true })
  writeFileSync(uncompiled, '')
  await step('Installing packages (a few minutes, only when they changed)', () =>
    run('npm', ['ci', '--no-audit', '--no-fund', '--ignore-scripts']),
  )
}

/** SQLite comes as source: one core compiles it for a minute, and whatever does not open a database need not wait. */
export async function compilePackages() {
  if (!existsSync(uncompiled)) return
  await step('Compiling packages (a minute, only when they changed)', () => run('npm', ['rebuild'], { keep: 'quiet' }))
  rmSync(uncompiled)
}
