import { expect, test, type Page } from '@playwright/test'
import { openHead, signIn } from './person'
import { fitsItsWidth, isSound } from './sound'

/** Every page at the desk, on the tablet and on the phone: nothing sticks out sideways, and axe finds nothing. */

const places = [
  '/counter',
  '/counter/book',
  '/counter/labels',
  '/counter/unpaid',
  '/customers',
  '/customers/import',
  '/stations',
  '/stations/measuring-bench',
  '/away',
  '/cut-bench',
  // With an answer: a slider, a drawing, what follows, and what it needs.
  '/cut-bench?now=64&to=56&used=0&openingAreaIn2=10.1706&openingCentreIn=3.810&milledWidthIn=6',
  '/back-room',
  '/back-room/prices',
  '/back-room/taxes',
  '/back-room/taxes/new',
  '/back-room/backup',
  '/back-room/bookkeeper',
  '/back-room/messages/ready',
  '/back-room/messages/server',
  '/back-room/settings',
  '/back-room/shop',
  '/back-room/tablets',
  '/back-room/tablets/new',
  '/back-room/steps',
  '/back-room/steps/port',
  '/back-room/steps/new?outside=1',
  '/back-room/steps/stations',
  '/away?by=promise',
  '/away/supply/new',
  '/find?q=T-04',
  '/help',
  '/account',
]

/**
 * At 64rem and more the styles are the desk's, and nothing in them asks for touch: on the tablet axe would look at the
 * desk's page again. Its width is its own: the page is measured at it, and put back.
 */
async function isSoundPage(page: Page, where: string): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 }), where).toBeVisible()
  await isSound(page, where)
  if (test.info().project.name !== 'desk') return
  const desk = page.viewportSize()
  await page.setViewportSize({ width: 1024, height: 768 })
  await fitsItsWidth(page, `${where}, on the tablet`)
  if (desk) await page.setViewportSize(desk)
}

/** A check that finds nothing anywhere would be worth nothing. */
test('what is wrong is found', async ({ page }) => {
  await page.goto('/sign-in')
  await page.evaluate(() => {
    document.body.insertAdjacentHTML('beforeend', '<input><p style="color:#bbb;background:#fff">faint</p>')
  })
  await expect(isSound(page)).rejects.toThrow(/color-contrast[\s\S]*label/)
})

test('the sign-in page, and that of a tablet’s code', async ({ page }) => {
  for (const where of ['/sign-in', '/tablet']) {
    await page.goto(where)
    await isSoundPage(page, where)
  }
})

test('every place', async ({ page }) => {
  test.setTimeout(240_000)
  await signIn(page, 'orla')
  for (const place of places) {
    await page.goto(place)
    await isSoundPage(page, place)
  }
  await page.goto('/cut-bench')
  await page.getByRole('region', { name: 'Saved estimates' }).getByRole('link').first().click()
  await page.waitForURL(/\/cut-bench\/kept\//)
  await isSoundPage(page, 'a kept estimate')
})

test('a head, its step, its plan and its job', async ({ page }) => {
  test.setTimeout(240_000)
  await signIn(page, 'orla')
  await page.goto('/stations/measuring-bench')
  const line = page.getByRole('region', { name: 'Ready' }).getByRole('link').first()
  const tag = /T-\d+/.exec(await line.innerText())?.[0] ?? ''
  await line.click()
  await expect(page).toHaveURL(/heads\//)
  await isSoundPage(page, 'a step')
  await openHead(page, tag)
  await isSoundPage(page, 'the record of a head')
  const plan = await page.getByRole('link', { name: 'Cut plan' }).first().getAttribute('href')
  await page.goto(plan ?? '')
  await isSoundPage(page, 'a cut plan')
  await page.goto((plan ?? '').split('/plan/')[0] ?? '')
  await isSoundPage(page, 'a job')
})

test('what is out and what is on order', async ({ page }) => {
  test.setTimeout(120_000)
  await signIn(page, 'orla')
  for (const order of [/^O-0002$/, /^S-0003$/]) {
    await page.goto('/away')
    await page.getByRole('link', { name: order }).first().click()
    await expect(page).toHaveURL(/away\/.*[0-9a-f-]{36}/)
    await isSoundPage(page, `${order}`)
  }
})

test.describe('at night', () => {
  test.use({ colorScheme: 'dark' })
  test('the stations', async ({ page }) => {
    await signIn(page, 'dov')
    for (const place of ['/stations', '/stations/deck-mill', '/cut-bench?to=56&used=0']) {
      await page.goto(place)
      await isSoundPage(page, `${place}, dark`)
    }
  })
})
