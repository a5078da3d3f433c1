import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { signIn } from './person'
import { startServer } from './server'

/** The pictures of the README, taken from a fresh demo. Needs a build; `npm run pictures`. */
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

async function firstOf(page: Page, queue: string): Promise<void> {
  await page.goto(queue)
  await page.getByRole('main').getByRole('listitem').getByRole('link').first().click()
  await page.waitForURL(/\/heads\//)
}

const server = await startServer('demo')
const systemChromium = '/usr/bin/chromium'
const browser = await chromium.launch({
  executablePath: existsSync(systemChromium) ? systemChromium : undefined,
  args: ['--no-sandbox', '--disable-gpu'],
})
mkdirSync(folder, { recursive: true })
for (const { name, who, size, go } of shots) {
  const [width, height] = size
  const page = await browser.newPage({ baseURL: server.url, viewport: { width, height } })
  await signIn(page, who)
  await go(page)
  await page.evaluate(() => document.fonts.ready)
  await page.screenshot({ path: join(folder, `${name}.png`) })
  await page.close()
}
await browser.close()
await server.stop()
