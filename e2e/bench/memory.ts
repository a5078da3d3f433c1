import { chromium, type CDPSession, type Page } from '@playwright/test'
import { systemChromium } from '../../tests/setup/browser'
import { signInAtForm } from '../person'
import { startServer } from '../server'

/**
 * What a working day leaves in a tablet's memory: a step's page asks for changes over eight hours, by a clock that runs
 * fast, and 300 deeds go through the outbox. `npm run memory` prints the heap after a collection at the start, in the
 * middle and at the end; needs a build. With BRASSTAG_MEMORY_URL it looks at a demo that runs already.
 */
const hours = 8
const deeds = 300
/** The deeds are spread over the day. */
const minutesBetween = (hours * 60) / deeds

type Seen = {
  readonly at: string
  readonly heapMb: number
  readonly nodes: number
  readonly listeners: number
  readonly asked: number
}

async function look(devtools: CDPSession, at: string, asked: number): Promise<Seen> {
  // Twice: what the first collection lets go of may hold more.
  await devtools.send('HeapProfiler.collectGarbage')
  await devtools.send('HeapProfiler.collectGarbage')
  const { usedSize } = await devtools.send('Runtime.getHeapUsage')
  const { metrics } = await devtools.send('Performance.getMetrics')
  const metric = (name: string): number => metrics.find((one) => one.name === name)?.value ?? NaN
  const seen = { heapMb: Number((usedSize / 1e6).toFixed(2)), nodes: metric('Nodes') }
  return { at, ...seen, listeners: metric('JSEventListeners'), asked }
}

/** A head is moved to and fro: the shortest deed that goes through the outbox. */
async function moveHead(page: Page, place: string): Promise<void> {
  await page.getByRole('button', { name: /rack location$/ }).click()
  await page.getByRole('textbox', { name: /^Rack location/ }).fill(place)
  await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click()
  await page.getByText(`Rack location: ${place}`).waitFor()
}

async function workDay(page: Page): Promise<readonly Seen[]> {
  let asked = 0
  page.on('request', (request) => (asked += Number(request.url().includes('/api/changes'))))
  await signInAtForm(page, 'dov')
  await page.clock.install()
  await page.goto('/stations/measuring-bench')
  await page.getByRole('region', { name: 'Ready' }).getByRole('link').first().click()
  await page.getByRole('button', { name: /rack location$/ }).waitFor()
  const devtools = await page.context().newCDPSession(page)
  await devtools.send('Performance.enable')
  await devtools.send('HeapProfiler.enable')
  // The first deed loads what every later one uses.
  await moveHead(page, 'A-0')
  const seen = [await look(devtools, 'start', asked)]
  for (let deed = 1; deed <= deeds; deed += 1) {
    await moveHead(page, `A-${deed}`)
    await page.clock.runFor(minutesBetween * 60_000)
    if (deed === deeds / 2) seen.push(await look(devtools, 'middle', asked))
  }
  seen.push(await look(devtools, 'end', asked))
  return seen
}

async function main(): Promise<void> {
  const running = process.env.BRASSTAG_MEMORY_URL
  const server = running ? null : await startServer('demo')
  const browser = await chromium.launch({ executablePath: systemChromium(), args: ['--no-sandbox'] })
  try {
    const baseURL = running ?? server?.url ?? ''
    const size = { width: 1024, height: 768 }
    const page = await browser.newPage({ baseURL, viewport: size, serviceWorkers: 'block' })
    await page.addInitScript('globalThis.__name = (named) => named')
    for (const row of await workDay(page)) process.stdout.write(`${JSON.stringify(row)}\n`)
  } finally {
    await browser.close()
    await server?.stop()
  }
}

await main()
