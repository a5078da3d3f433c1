import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { CommandFailed, run, step } from './process.mjs'

const tools = ['qpdf', 'pdftoppm']

const isThere = (tool) => spawnSync(tool, ['--version'], { stdio: 'ignore' }).error === undefined

/** What the papers are looked at with, by programs that are not ours: qpdf and poppler, from Debian's packages. */
export async function installPaperTools() {
  if (tools.every(isThere)) return
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) {
    throw new CommandFailed('The tests of papers need qpdf and pdftoppm (poppler). Install them, then try again.')
  }
  await step('Installing qpdf and poppler for the tests of papers (only the first time)', async () => {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    await run('apt-get', ['update', '-q'], { env, keep: 'quiet' })
    await run('apt-get', ['install', '-q', '-y', '--no-install-recommends', 'qpdf', 'poppler-utils'], {
      env,
      keep: 'quiet',
    })
  })
}
