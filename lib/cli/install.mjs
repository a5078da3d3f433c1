import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
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

export async function installPackages() {
  if (packagesAreInstalled()) return
  await step('Installing packages (a few minutes, only when they changed)', () =>
    run('npm', ['ci', '--no-audit', '--no-fund']),
  )
}
