import { expect, test, type Page } from '@playwright/test'
import { queueStands, signIn } from './person'

/** A tablet on its side, upright, and a phone. */
const sizes = [
  { width: 1024, height: 768, keyPx: 96, commitPx: 96 },
  { width: 768, height: 1024, keyPx: 96, commitPx: 96 },
  { width: 390, height: 844, keyPx: 52, commitPx: 64 },
] as const

/** One address of each kind of step that waits at some station of the demo. */
async function stepsOfTheDemo(page: Page): Promise<ReadonlyMap<string, string>> {
  const hrefs = (selector: string) =>
    page.locator(selector).evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
  const go = (to: string) => page.goto(to, { waitUntil: 'domcontentloaded' })
  await go('/stations')
  const steps = new Map<string, string>()
  for (const station of new Set(await hrefs('main a[href^="/stations/"]'))) {
    await go(station)
    await queueStands(page)
    for (const href of await hrefs('main a[href*="/heads/"]')) {
      const step = /step=([\w-]+)/.exec(href)?.[1]
      if (step && !steps.has(step)) steps.set(step, href)
    }
  }
  return steps
}

/** What sticks out, and the smallest sides of what is tapped, in px. */
const measure = (page: Page) =>
  page.evaluate(() => {
    const boxes = (selector: string) =>
      [...document.querySelectorAll<HTMLElement>(selector)]
        .map((element) => element.getBoundingClientRect())
        .filter(({ width }) => width > 0)
    const isInView = ({ top, left, bottom, right }: DOMRect) =>
      top >= 0 && left >= 0 && bottom <= innerHeight + 1 && right <= innerWidth + 1
    const smallest = (of: DOMRect[]) => Math.min(...of.map(({ width, height }) => Math.min(width, height)))
    const keys = boxes('[aria-label^="Keypad"] button')
    const commit = boxes('[data-commit]')
    return {
      scrollsPx: document.documentElement.scrollHeight - innerHeight,
      sticksOutPx: document.documentElement.scrollWidth - innerWidth,
      cells: boxes('input[data-figure]').length,
      keys: keys.length,
      inView: [...keys, ...commit].every(isInView) && commit.length > 0,
      key: smallest(keys),
      commit: smallest(commit),
      other: smallest(boxes('[data-one-screen] header button, [data-one-screen] header a, input[data-figure]')),
    }
  })

test('every step of the demo is one screen at each size: cells, keypad and button in view, all of it large enough', async ({
  page,
}) => {
  await signIn(page, 'dov')
  const steps = await stepsOfTheDemo(page)
  expect(steps.size).toBeGreaterThan(20)
  let withKeys = 0
  let seenSteps = 0
  for (const [step, href] of steps) {
    await page.setViewportSize(sizes[0])
    await page.goto(href, { waitUntil: 'domcontentloaded' })
    // Ticked meanwhile by whoever else is in the shop, or gone from the route.
    const over = page.getByRole('status').filter({ hasText: 'Done.' }).or(page.getByText('is not on the route'))
    await expect(page.locator('[data-one-screen] [data-commit]').or(over).first()).toBeVisible()
    if (await over.first().isVisible()) continue
    seenSteps += 1
    for (const { keyPx, commitPx, ...size } of sizes) {
      await page.setViewportSize(size)
      const seen = await measure(page)
      if (seen.commit === Infinity && (await over.first().isVisible())) break
      const what = `${step} at ${size.width} × ${size.height}: ${JSON.stringify(seen)}`
      expect(seen.scrollsPx, what).toBeLessThanOrEqual(0)
      expect(seen.sticksOutPx, what).toBeLessThanOrEqual(0)
      expect(seen.inView, what).toBe(true)
      expect(seen.commit, what).toBeGreaterThanOrEqual(commitPx)
      expect(seen.other, what).toBeGreaterThanOrEqual(48)
      if (seen.cells === 0) continue
      withKeys += 1
      expect(seen.keys, what).toBe(16)
      expect(seen.key, what).toBeGreaterThanOrEqual(keyPx)
    }
  }
  expect(seenSteps).toBeGreaterThan(20)
  expect(withKeys).toBeGreaterThan(20)
  await nextGoesThroughTheCells(page, steps.get('pressure') ?? '')
  await leftHandHasTheSame(page, steps.get('pressure') ?? '')
  await waysOnAreReadable(page, (steps.get('wash-out') ?? '').replace('wash-out', 'wash-in'))
})

/** With the keypad at the left everything is as wide as with it at the right. */
async function leftHandHasTheSame(page: Page, step: string): Promise<void> {
  await page.setViewportSize(sizes[0])
  await page.goto(step)
  const boxOf = async (selector: string) => {
    const box = await page.locator(selector).first().boundingBox()
    return { x: box?.x ?? NaN, width: Math.round(box?.width ?? NaN) }
  }
  const [key, cell] = ['[aria-label^="Keypad"] button', 'input[data-figure]']
  const before = { key: await boxOf(key), cell: await boxOf(cell) }
  expect(before.key.x).toBeGreaterThan(before.cell.x)
  await page.getByRole('button', { name: 'Keypad on the left' }).click()
  const after = { key: await boxOf(key), cell: await boxOf(cell) }
  expect(after.key.x).toBeLessThan(after.cell.x)
  expect([after.key.width, after.cell.width]).toEqual([before.key.width, before.cell.width])
  await page.getByRole('button', { name: 'Keypad on the right' }).click()
}

/** “Next” goes through all empty cells, whatever their kinds, and then to the button; one tab stop leads into the keys. */
async function nextGoesThroughTheCells(page: Page, step: string): Promise<void> {
  await page.setViewportSize(sizes[0])
  await page.goto(step)
  const cells = page.locator('input[data-figure]')
  await expect(cells.first()).toBeVisible()
  const many = await cells.count()
  expect(many).toBeGreaterThan(1)
  await cells.first().focus()
  for (let at = 1; at < many; at += 1) {
    await page.getByRole('button', { name: 'Next' }).click()
    await expect(cells.nth(at)).toBeFocused()
  }
  await page.getByRole('button', { name: 'Next' }).click()
  await expect(page.getByRole('button', { name: 'Save and done' })).toBeFocused()

  const keys = page.getByRole('group', { name: /^Keypad for / })
  await keys.getByRole('button', { name: '7', exact: true }).focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowDown')
  await expect(keys.getByRole('button', { name: '5', exact: true })).toBeFocused()
  expect(await keys.locator('button[tabindex="0"]').count()).toBe(1)
}

/** After a step: each way on is wide enough for its words, the first for a glove. */
async function waysOnAreReadable(page: Page, doneStep: string): Promise<void> {
  await page.goto(doneStep)
  const ways = page.getByRole('link', { name: /^(Next head|This head|Queue$)/ })
  await expect(ways.first()).toContainText('Next head')
  for (const { width, height } of sizes) {
    await page.setViewportSize({ width, height })
    const widths = await ways.evaluateAll((links) => links.map((link) => link.getBoundingClientRect().width))
    expect(widths[0], `${width} px: ${widths.join(', ')}`).toBeGreaterThanOrEqual(240)
    expect(Math.min(...widths)).toBeGreaterThanOrEqual(64)
    const cut = await ways.evaluateAll((links) => links.filter((link) => link.scrollWidth > link.clientWidth).length)
    expect(cut, `${width} px`).toBe(0)
  }
}
