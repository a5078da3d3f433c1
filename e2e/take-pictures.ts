import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import sharp from 'sharp'
import { signIn } from './person'
import { systemChromium } from '../tests/setup/browser'
import { startServer } from './server'

/** The pictures of the README, screens and papers of a fresh demo. Needs a build, and pdftoppm; `npm run pictures`. */
const folder = join(import.meta.dirname, '..', 'public', 'pictures')

const shots: readonly {
  name: string
  who: string
  size: [number, number]
  go: (page: Page) => Promise<unknown>
}[] = [
  { name: 'counter', who: 'tamsin', size: [1280, 800], go: (page) => page.goto('/counter') },
  { name: 'station', who: 'dov', size: [1024, 768], go: (page) => page.goto('/stations/measuring-bench') },
  { name: 'mill', who: 'dov', size: [1024, 768], go: (page) => firstOf(page, '/stations/deck-mill') },
  {
    name: 'cut-bench',
    who: 'tamsin',
    size: [1280, 1500],
    go: (page) => page.goto('/cut-bench?now=64&to=58&used=0&openingAreaIn2=10.1706'),
  },
  { name: 'away', who: 'orla', size: [1280, 800], go: (page) => page.goto('/away') },
]

/** Papers of the demo, where their address is found, and which of their pages. */
const papers: readonly { name: string; page: number; address: (page: Page) => Promise<string> }[] = [
  { name: 'job-sheet', page: 1, address: async () => '/api/papers/job-sheet/26-0005' },
  { name: 'tag-label', page: 1, address: async () => '/api/papers/tag-labels/26-0005' },
  { name: 'spec-sheet', page: 1, address: (page) => linkOn(page, '/t/T-0401', 'spec-sheet') },
  { name: 'spec-sheet-second', page: 2, address: (page) => linkOn(page, '/t/T-0401', 'spec-sheet') },
  { name: 'outside-sheet', page: 1, address: (page) => linkOn(page, '/away', 'outside-sheet') },
  { name: 'estimate', page: 1, address: (page) => keptEstimate(page) },
  { name: 'receipt', page: 1, address: async () => '/api/papers/hand-over-slip/26-0002' },
]

/** The first link to such a paper on a page. */
async function linkOn(page: Page, address: string, kind: string): Promise<string> {
  await page.goto(address)
  const link = page.locator(`a[href*="/api/papers/${kind}/"]`).first()
  return (await link.getAttribute('href')) ?? ''
}

async function keptEstimate(page: Page): Promise<string> {
  await page.goto('/cut-bench')
  await page.getByRole('link', { name: /^E-0001/ }).click()
  await page.waitForURL(/\/kept\//)
  return linkOn(page, page.url(), 'estimate')
}

/** Wide enough to be read, small enough to be kept beside the code: few greys and the brass of the plate. */
const paperWidthPx = 1000

async function takePapers(page: Page): Promise<void> {
  const work = mkdtempSync(join(tmpdir(), 'papers-'))
  for (const paper of papers) {
    const answer = await page.request.get(await paper.address(page))
    if (!answer.ok()) throw new Error(`No ${paper.name}: ${answer.status()}`)
    const [pdf, png] = ['paper.pdf', 'paper'].map((file) => join(work, file)) as [string, string]
    writeFileSync(pdf, await answer.body())
    const one = ['-f', String(paper.page), '-l', String(paper.page), '-singlefile']
    execFileSync('pdftoppm', ['-png', '-scale-to-x', String(paperWidthPx), '-scale-to-y', '-1', ...one, pdf, png])
    const small = await sharp(`${png}.png`).png({ palette: true, colours: 16, compressionLevel: 9 }).toBuffer()
    writeFileSync(join(folder, `paper-${paper.name}.png`), small)
  }
  rmSync(work, { recursive: true })
}

async function firstOf(page: Page, queue: string): Promise<void> {
  await page.goto(queue)
  await page.getByRole('main').getByRole('listitem').getByRole('link').first().click()
  await page.waitForURL(/\/heads\//)
}

const server = await startServer('demo')
const browser = await chromium.launch({
  executablePath: systemChromium(),
  args: ['--no-sandbox', '--disable-gpu'],
})
mkdirSync(folder, { recursive: true })
for (const { name, who, size, go } of shots) {
  const [width, height] = size
  const page = await browser.newPage({ baseURL: server.url, viewport: { width, height } })
  await signIn(page, who)
  await go(page)
  // The stations are drawn in the browser, after the page has come.
  if (name === 'station') await page.locator('main section[aria-label="Ready"] a').first().waitFor()
  if (name === 'mill') await page.locator('[data-commit]').first().waitFor()
  await page.evaluate(() => document.fonts.ready)
  await page.screenshot({ path: join(folder, `${name}.png`) })
  await page.close()
}
const counter = await browser.newPage({ baseURL: server.url })
await signIn(counter, 'orla')
await takePapers(counter)
await counter.close()
await browser.close()
await server.stop()
