import AxeBuilder from '@axe-core/playwright'
import { expect, test, type Page } from '@playwright/test'
import { openHead, signIn } from './person'

/** Every page at the desk, on the tablet and on the phone: nothing sticks out sideways, and axe finds nothing. */

const places = [
  '/counter',
  '/counter/book',
  '/counter/labels',
  '/stations',
  '/stations/measuring-bench',
  '/away',
  '/cut-bench',
  // With an answer: a slider, a drawing, what follows, and what it needs.
  '/cut-bench?now=64&to=56&used=0&openingAreaIn2=10.1706&openingCentreIn=3.810&milledWidthIn=6',
  '/back-room',
  '/back-room/prices',
  '/back-room/settings',
  '/back-room/shop',
  '/back-room/steps',
  '/back-room/steps/port',
  '/back-room/steps/new?outside=1',
  '/back-room/steps/stations',
  '/away?by=promise',
  '/away/supply/new',
  '/find?q=T-04',
  '/help',
]

async function isSound(page: Page, where: string): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 }), where).toBeVisible()
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(sideways, `${where} sticks out sideways`).toBeLessThanOrEqual(0)
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
  const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze()
  const said = violations.map(
    (one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join(' | ')}`,
  )
  expect(said, where).toEqual([])
}

test('the sign-in page', async ({ page }) => {
  await page.goto('/sign-in')
  await isSound(page, '/sign-in')
})

test('every place', async ({ page }) => {
  test.setTimeout(240_000)
  await signIn(page, 'orla')
  for (const place of places) {
    await page.goto(place)
    await isSound(page, place)
  }
  await page.goto('/cut-bench')
  await page.getByRole('region', { name: 'Kept estimates' }).getByRole('link').first().click()
  await page.waitForURL(/\/cut-bench\/kept\//)
  await isSound(page, 'a kept estimate')
})

test('a head, its step, its plan and its job', async ({ page }) => {
  test.setTimeout(240_000)
  await signIn(page, 'orla')
  await page.goto('/stations/measuring-bench')
  const line = page.getByRole('region', { name: 'Ready' }).getByRole('link').first()
  const tag = /T-\d+/.exec(await line.innerText())?.[0] ?? ''
  await line.click()
  await expect(page).toHaveURL(/heads\//)
  await isSound(page, 'a step')
  await openHead(page, tag)
  await isSound(page, 'the record of a head')
  const plan = await page.getByRole('link', { name: 'Cut plan' }).first().getAttribute('href')
  await page.goto(plan ?? '')
  await isSound(page, 'a cut plan')
  await page.goto((plan ?? '').split('/plan/')[0] ?? '')
  await isSound(page, 'a job')
})

test('what is out and what is on order', async ({ page }) => {
  test.setTimeout(120_000)
  await signIn(page, 'orla')
  for (const order of [/^O-0002$/, /^S-0003$/]) {
    await page.goto('/away')
    await page.getByRole('link', { name: order }).first().click()
    await expect(page).toHaveURL(/away\/.*[0-9a-f-]{36}/)
    await isSound(page, `${order}`)
  }
})

test.describe('at night', () => {
  test.use({ colorScheme: 'dark' })
  test('the stations', async ({ page }) => {
    await signIn(page, 'dov')
    for (const place of ['/stations', '/stations/deck-mill', '/cut-bench?to=56&used=0']) {
      await page.goto(place)
      await isSound(page, `${place}, dark`)
    }
  })
})
