import { chromium, type Browser, type Cookie, type Page } from '@playwright/test'
import { systemChromium } from '../../tests/setup/browser'
import { signInByRequest } from '../sign-in-by-request'
import { startServer } from '../server'
import { median, type Figure } from '../../tests/bench/measure'

/**
 * A phone on a slow network, as Lighthouse's `mobileSlow4G` has it for a browser that is held back (devtools
 * throttling). Source: Lighthouse, core/lib/lantern/simulation/Constants.js.
 */
const phone = { viewport: { width: 412, height: 823 }, deviceScaleFactor: 1.75, isMobile: true, hasTouch: true }
const slowdown = 4
const bytesPerKbit = 1024 / 8
const network = {
  offline: false,
  latency: 562.5,
  downloadThroughput: 1474.56 * bytesPerKbit,
  uploadThroughput: 675 * bytesPerKbit,
}

const goals = { largestMs: 2500, blockingMs: 200, shift: 0.1, faceKb: 75 }
const rounds = 3

type Seen = {
  readonly largestMs: number
  readonly blockingMs: number
  readonly shift: number
  readonly faceKb: number
  readonly scriptKb: number
}

/** Written as text: what the script loader writes around functions is not in the page. */
const watch = `
  window.seen = { largestMs: 0, firstMs: 0, shift: 0, long: [] }
  const look = (type, take) =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true })
  look('largest-contentful-paint', (entry) => (seen.largestMs = entry.startTime))
  look('paint', (entry) => entry.name === 'first-contentful-paint' && (seen.firstMs = entry.startTime))
  look('layout-shift', (entry) => entry.hadRecentInput || (seen.shift += entry.value))
  look('longtask', (entry) => seen.long.push([entry.startTime, entry.duration]))
`

/** What a task takes over 50 ms keeps a finger waiting; before the first paint there is nothing to touch. */
const taken = `({
  largestMs: seen.largestMs,
  shift: seen.shift,
  blockingMs: seen.long.reduce((sum, [start, ms]) =>
    sum + Math.max(0, Math.min(start + ms - seen.firstMs, ms) - 50), 0),
})`

async function look(browser: Browser, cookies: Cookie[], address: string): Promise<Seen> {
  const context = await browser.newContext({ ...phone, serviceWorkers: 'block' })
  try {
    await context.addCookies(cookies)
    const page = await context.newPage()
    await page.addInitScript(watch)
    const kb = await bytesOf(page, async () => {
      await page.goto(address)
      // The page of sign-in stands in for a page that is refused, and would be measured in its place.
      if (page.url().includes('/sign-in')) throw new Error(`${address} asks to sign in`)
      await page.waitForLoadState('networkidle')
      // Work that a page leaves for when it has nothing else to do.
      await page.waitForTimeout(2000)
    })
    const times = await page.evaluate<Pick<Seen, 'largestMs' | 'blockingMs' | 'shift'>>(taken)
    return { ...times, faceKb: kb('Font'), scriptKb: kb('Script') }
  } finally {
    await context.close()
  }
}

/** Kilobytes that came over the network, by kind, while `work` ran on a page held back to a phone's pace. */
async function bytesOf(page: Page, work: () => Promise<void>): Promise<(kind: string) => number> {
  const devtools = await page.context().newCDPSession(page)
  const kinds = new Map<string, string>()
  const bytes = new Map<string, number>()
  devtools.on('Network.responseReceived', ({ requestId, type }) => kinds.set(requestId, type))
  devtools.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const kind = kinds.get(requestId) ?? 'Other'
    bytes.set(kind, (bytes.get(kind) ?? 0) + encodedDataLength)
  })
  await devtools.send('Network.enable')
  await devtools.send('Network.emulateNetworkConditions', network)
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown })
  await work()
  return (kind) => (bytes.get(kind) ?? 0) / 1000
}

/** The first link to a page of its kind, from a list. */
async function linkOn(browser: Browser, cookies: Cookie[], list: string, link: string): Promise<string> {
  const context = await browser.newContext()
  await context.addCookies(cookies)
  const page = await context.newPage()
  await page.goto(list)
  const href = await page.locator(link).first().getAttribute('href')
  await context.close()
  if (!href) throw new Error(`${list} has no ${link}`)
  return new URL(href, list).href
}

function figuresOf(name: string, seen: readonly Seen[]): Figure[] {
  const row = (what: string, of: (one: Seen) => number, unit: string, most: number): Figure => {
    const measured = median(seen.map(of))
    return { work: `phone, ${name}: ${what}`, measured, unit, goal: `≤ ${most}`, met: measured <= most }
  }
  return [
    row('largest paint', ({ largestMs }) => largestMs, 'ms', goals.largestMs),
    row('blocked', ({ blockingMs }) => blockingMs, 'ms', goals.blockingMs),
    row('shift of what stands there', ({ shift }) => shift, '', goals.shift),
    row('faces', ({ faceKb }) => faceKb, 'kB', goals.faceKb),
    {
      work: `phone, ${name}: script`,
      measured: median(seen.map(({ scriptKb }) => scriptKb)),
      unit: 'kB',
      goal: 'none set',
      met: true,
    },
  ]
}

/** What a phone waits for on the pages that people open most. Needs a build and an idle machine. */
export async function phoneFigures(): Promise<Figure[]> {
  const server = await startServer('demo')
  const browser = await chromium.launch({ executablePath: systemChromium(), args: ['--no-sandbox', '--disable-gpu'] })
  try {
    const cookies = await signInByRequest(server.url, 'orla')
    const pages = {
      counter: `${server.url}/counter`,
      job: await linkOn(browser, cookies, `${server.url}/counter`, 'main a[href^="/jobs/"]'),
      queue: `${server.url}/stations/measuring-bench`,
      'cut bench': `${server.url}/cut-bench?target=58`,
      customer: await linkOn(browser, cookies, `${server.url}/customers`, 'main tbody a[href^="/customers/"]'),
    }
    const figures: Figure[] = []
    for (const [name, address] of Object.entries(pages)) {
      const seen: Seen[] = []
      for (let round = 0; round < rounds; round += 1) seen.push(await look(browser, cookies, address))
      figures.push(...figuresOf(name, seen))
    }
    return figures
  } finally {
    await browser.close()
    await server.stop()
  }
}
