import { existsSync } from 'node:fs'
import { installed, run, step } from './process.mjs'

/**
 * Debian's own browser, where there is one. The one without a window does the same work with a fifth less of the
 * processor, so it goes first.
 */
export const systemChromium = () => ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find(existsSync)

const isDebianRoot = () => process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')

/** Whether the browser is there without a package of ours. */
export const browserIsOfTheSystem = systemChromium() !== undefined || isDebianRoot()

/** The browser for the browser tests: Debian's for root on Debian, else the one that Playwright brings. */
export async function installBrowser() {
  if (systemChromium()) return
  await step('Installing a browser for the browser tests (only the first time)', async () => {
    if (isDebianRoot()) {
      const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
      await run('apt-get', ['update', '-q'], { env, keep: 'quiet' })
      await run('apt-get', ['install', '-q', '-y', '--no-install-recommends', 'chromium-headless-shell'], {
        env,
        keep: 'quiet',
      })
    } else {
      await run(process.execPath, [installed('@playwright', 'test', 'cli.js'), 'install', 'chromium'])
    }
  })
}
