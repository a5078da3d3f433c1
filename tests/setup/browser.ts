/** For what starts a browser without the browser tests' settings. */
export { systemChromium } from '@/lib/cli/browser.mjs'
