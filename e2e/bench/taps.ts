import { chromium, type Locator, type Page } from '@playwright/test'
import { systemChromium } from '../../tests/setup/browser'
import { signInAtForm } from '../person'
import { startServer } from '../server'

/**
 * Taps, swipes and waiting from a station's queue to the ticked step, for each kind of step that waits in a fresh demo, on
 * a tablet of 1024 × 768; `npm run taps`. With BRASSTAG_TAPS_URL it walks a demo that runs already, of another build say.
 */
const size = { width: 1024, height: 768 }

/** Figures as the demo's people type them, by the group they stand in; how many digits there are is what counts. */
const typical: Readonly<Record<string, string>> = {
  'Air pressure held': '40',
  'Water temperature': '70',
  'Held for': '15',
  Thickness: '4.995',
  Straightness: '.001',
  'Chamber volume': '63.4',
  'Seat to deck': '.045',
  'Total depth from touch-off': '18',
  'Cut off the intake face': '20',
  'Removed before this job': '0',
}
const usual = '.050'

/** A column of the valve sheet, filled for all valves of a kind. */
const columns: readonly (readonly [RegExp, string])[] = [
  [/width/i, '.060'],
  [/runout/i, '.001'],
  [/vacuum/i, '20'],
  [/installed height/i, '1.800'],
  [/coil bind/i, '1.060'],
  [/retainer/i, '.620'],
  [/pressure/i, '120'],
  [/shim/i, '0'],
  [/recession/i, '.010'],
  [/stem height/i, '1.900'],
]

/** Where the first answer is not the good one. */
const good = [
  /^Fits either side$/,
  /^The shop’s checking/,
  /^To be checked at assembly/,
  /^Leave it$/,
  /^Customer told/,
]

/** Not owed by a step that goes well. */
const leftOut = /^(Clearance measured|Another lift)|other angles$/

type Walk = { taps: number; swipes: number; typed: number }

/** A finger: what is not on the screen is swiped to first, two thirds of a screen at a time. */
async function tap(walk: Walk, target: Locator): Promise<void> {
  const box = await target.boundingBox()
  if (box) {
    const away = Math.max(-box.y, box.y + box.height - size.height, 0)
    walk.swipes += Math.ceil(away / (size.height * (2 / 3)))
  }
  walk.taps += 1
  await target.tap()
}

/** The first cell still to be filled, and what is typed there: by its expected figure, or what is usual for its group. */
const nextCell = (page: Page) =>
  page.locator('input[inputmode="none"]').evaluateAll((inputs, left) => {
    const wordsOf = (ids: string | null) =>
      (ids ?? '')
        .split(' ')
        .map((id) => document.getElementById(id)?.innerText ?? '')
        .join(' ')
    const cells = inputs.map((input, at) => {
      const group = input.closest('[role="group"], fieldset')
      const legend = group?.querySelector('legend')?.textContent ?? ''
      return {
        at,
        label: (input as HTMLInputElement).labels?.[0]?.textContent ?? input.getAttribute('aria-label') ?? '',
        group: group?.getAttribute('aria-label') ?? (wordsOf(group?.getAttribute('aria-labelledby') ?? '') || legend),
        beside: wordsOf(input.getAttribute('aria-describedby')),
        empty: (input as HTMLInputElement).value === '' && !(input as HTMLInputElement).disabled,
      }
    })
    const alike = cells.filter(({ label }) => label.startsWith('All '))
    const wanted = alike.length > 0 ? alike : cells
    return wanted.find(
      ({ group, label, empty }) => empty && !new RegExp(left).test(group) && !new RegExp(left).test(label),
    )
  }, leftOut.source)

/** "63.4 ± 1.5 cc", "at most 4.2530 in", "4.0000 to 4.2530 in": a figure in the middle of what the cell expects. */
function likely(beside: string): string | undefined {
  const [, middle, unit] = /([\d.]+) ± [\d.]+ (\S+?),?(?:\s|$)/.exec(beside) ?? []
  const [, low, high] = /([\d.]+) to ([\d.]+)/.exec(beside) ?? []
  const [, most] = /at most ([\d.]+)/.exec(beside) ?? []
  if (middle)
    return Number(middle)
      .toFixed(unit === 'cc' ? 1 : 3)
      .replace(/^0/, '')
  if (low && high && Number(low) < Number(high)) return ((Number(low) + Number(high)) / 2).toFixed(3).replace(/^0/, '')
  return most && (Number(most) * 0.999).toFixed(3).replace(/^0/, '')
}

/** The keys that write into a cell: the nearest ones around it. */
const keysOf = (cell: Locator): Locator => cell.locator('xpath=ancestor::*[.//button[normalize-space()="7"]][1]')

async function typeFigures(page: Page, walk: Walk): Promise<void> {
  for (let many = 0; many < 60; many += 1) {
    const next = await nextCell(page)
    if (!next) return
    const cell = page.locator('input[inputmode="none"]').nth(next.at)
    if (!(await cell.evaluate((input) => input === document.activeElement))) await tap(walk, cell)
    const first = next.label.startsWith('Again: ')
      ? page.getByLabel(next.label.replace('Again: ', ''), { exact: true })
      : null
    const text = first
      ? await first.first().inputValue()
      : (likely(next.beside) ?? typical[next.group] ?? columns.find(([of]) => of.test(next.label))?.[1] ?? usual)
    for (const key of text) {
      const name = key === '.' ? 'point' : key
      await tap(walk, keysOf(cell).getByRole('button', { name, exact: true }).first())
    }
    await tap(
      walk,
      keysOf(cell)
        .getByRole('button', { name: /^(Next|Done|To the button)/ })
        .first(),
    )
  }
}

async function choose(page: Page, walk: Walk): Promise<void> {
  for (const question of await page.getByRole('radiogroup').all()) {
    const answers = question.locator('label')
    const texts = await answers.allInnerTexts()
    const at = texts.findIndex((text) => good.some((one) => one.test(text.trim())))
    await tap(walk, answers.nth(Math.max(at, 0)))
  }
  for (const select of await page.locator('select:not([data-optional])').all()) {
    const label = await select.evaluate((one: HTMLSelectElement) => one.labels?.[0]?.textContent ?? '')
    if (/optional|Cost of rework/.test(label)) continue
    if (await select.isVisible()) {
      walk.taps += 2
      await select.selectOption({ index: 1 })
    }
  }
}

/** Words are typed on the device's own keyboard: counted by letters, apart from the taps. */
async function write(page: Page, walk: Walk): Promise<void> {
  for (const label of [
    /^What came with it/,
    /^No photo: why/,
    /^Who took which/,
    /^Parts and cores/,
    /^Marks the vendor/,
  ]) {
    for (const field of await page.getByLabel(label).all()) {
      if (!(await field.isVisible())) continue
      await tap(walk, field)
      await field.fill('none')
      walk.typed += 'none'.length
    }
  }
}

type Row = Walk & { step: string; openMs: number; doneMs: number; said: string }

async function walkStep(page: Page, queue: string, step: string): Promise<Row> {
  const walk: Walk = { taps: 0, swipes: 0, typed: 0 }
  await page.goto(queue)
  const line = page.locator(`a[href*="/heads/"][href*="step=${step}"]`).first()
  await line.waitFor()
  // What is fetched ahead comes first: a person does not tap in the moment that the queue appears.
  await page.waitForTimeout(1000)
  const from = Date.now()
  await tap(walk, line)
  const commit = page.getByRole('button', { name: /^(Save and tick|Tick): / }).or(page.locator('[data-commit]'))
  await commit.waitFor()
  const openMs = Date.now() - from
  await choose(page, walk)
  await typeFigures(page, walk)
  await write(page, walk)
  const done = page.getByRole('status').filter({ hasText: /Done\.|Ticked\./ })
  const asked = page.getByLabel(/^Again: /)
  const pressed = Date.now()
  await tap(walk, commit)
  await done
    .or(asked.first())
    .first()
    .waitFor({ timeout: 8000 })
    .catch(() => {})
  if ((await done.count()) === 0 && (await asked.count()) > 0) {
    await typeFigures(page, walk)
    // A second tap within 400 ms counts for nothing.
    await page.waitForTimeout(500)
    await tap(walk, commit)
    await done.waitFor({ timeout: 8000 }).catch(() => {})
  }
  const said =
    (await done.count()) > 0 ? 'done' : (await page.locator('[role="alert"]').allInnerTexts()).join(' ').slice(0, 200)
  return { step, ...walk, openMs, doneMs: Date.now() - pressed, said }
}

/** Each kind of step that is ready at a station, and the station's queue. */
async function waiting(page: Page): Promise<ReadonlyMap<string, string>> {
  const steps = new Map<string, string>()
  await page.goto('/stations')
  const hrefs = (selector: string) =>
    page.locator(selector).evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
  for (const queue of new Set(await hrefs('main a[href^="/stations/"]'))) {
    await page.goto(queue)
    // A station without heads has no line to wait for, and another build draws its queue otherwise.
    await page.waitForTimeout(1500)
    for (const href of await hrefs('main a[href*="/heads/"]:not(details a)')) {
      const step = /step=([\w-]+)/.exec(href)?.[1]
      if (step && !steps.has(step)) steps.set(step, queue)
    }
  }
  return steps
}

async function main(): Promise<void> {
  const running = process.env.BRASSTAG_TAPS_URL
  const server = running ? null : await startServer('demo')
  const browser = await chromium.launch({ executablePath: systemChromium(), args: ['--no-sandbox'] })
  try {
    const baseURL = running ?? server?.url ?? ''
    const page = await browser.newPage({ baseURL, viewport: size, hasTouch: true, serviceWorkers: 'block' })
    // What the script loader writes around named functions is not in the page.
    await page.addInitScript('globalThis.__name = (named) => named')
    await signInAtForm(page, 'dov')
    for (const [step, queue] of await waiting(page)) {
      const row = await walkStep(page, queue, step).catch((error: Error) => ({
        step,
        said: error.message.slice(0, 300),
      }))
      process.stdout.write(`${JSON.stringify(row)}\n`)
    }
  } finally {
    await browser.close()
    await server?.stop()
  }
}

await main()
