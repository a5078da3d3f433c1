import { expect, test, type Page } from '@playwright/test'
import { checkIn } from './answers'
import { answer, openHead, openStep, signIn, tapAgain } from './person'
import type { PreparedCustomer } from '../tests/setup/prepared-heads'
import { prepared } from './prepared'
import { settled } from './settled'

/** What the browser asks the server for after a deed, and what it makes of an answer that is lost, late or a conflict. */

const tickButton = (page: Page) => page.getByRole('button', { name: /^(Save and done|Done)$/ })
const done = (page: Page) => page.getByRole('status').filter({ hasText: 'Done.' })

/** A button that is gone is not waited for. */
const soon = { timeout: 5000 }

/** Renders of a page: an action's answer that brings it, and a fetch of it by the router. Prefetches are no renders. */
function countRenders(page: Page): string[] {
  const seen: string[] = []
  page.on('request', (request) => {
    const headers = request.headers()
    if (headers['next-router-prefetch'] ?? headers['next-router-segment-prefetch']) return
    if (headers['next-action']) seen.push(`action ${new URL(request.url()).pathname}`)
    else if (headers['rsc']) seen.push(`fetch ${new URL(request.url()).pathname}`)
  })
  return seen
}

/** The machinist is at the page. */
async function headOf(page: Page, customer: PreparedCustomer): Promise<string> {
  await signIn(page, 'dov')
  return prepared(customer).tag
}

/** What a station's screen asks the server for: deeds sent, queues and steps read. */
function countAsked(page: Page): string[] {
  const seen: string[] = []
  page.on('request', (request) => {
    const { pathname } = new URL(request.url())
    if (/^\/api\/(operations|stations)/.test(pathname)) seen.push(`${request.method()} ${pathname}`)
  })
  return seen
}

test('a tick is sent once, and queue and step come once after it', async ({ page }) => {
  const tag = await headOf(page, 'Ansel Firth')
  await openStep(page, tag, 'Check in')
  await answer(page, checkIn)
  const [asked, renders] = [countAsked(page), countRenders(page)]
  await tickButton(page).click()
  await expect(done(page)).toBeVisible()
  await settled(page)
  expect(asked.sort()).toEqual([
    'GET /api/stations/front-desk',
    'GET /api/stations/front-desk/step',
    'POST /api/operations',
  ])
  expect(renders).toEqual([])
})

test('after a form that leads elsewhere the next page comes once, with the answer', async ({ page }) => {
  await signIn(page, 'orla')
  await page.goto('/back-room/vendors/new')
  await page.getByLabel('Name').fill('Tarn Lane Welding')
  const renders = countRenders(page)
  await page.locator('main form button[type=submit]').click()
  await page.waitForURL('**/back-room/vendors')
  await expect(page.getByText('Tarn Lane Welding')).toBeVisible()
  await settled(page)
  expect(renders).toEqual(['action /back-room/vendors/new'])
})

test('the second of two slow taps does not take the tick back', async ({ page }) => {
  const tag = await headOf(page, 'Berta Quill')
  await openStep(page, tag, 'Strip and wash')
  await tickButton(page).click()
  const undo = page.getByRole('button', { name: 'Take back' })
  await undo.waitFor()
  const renders = countRenders(page)
  // As late as a slow second tap, on the very place.
  await undo.dispatchEvent('click', undefined, soon)
  await page.waitForTimeout(600)
  await undo.dispatchEvent('click', undefined, soon)
  await settled(page)
  expect(renders).toEqual([])
  await expect(done(page)).toBeVisible()
  await undo.click()
  await expect(tickButton(page)).toBeVisible()
})

test('the second of two slow taps that take a tick back does not tick again', async ({ page }) => {
  const tag = await headOf(page, 'Caspar Wray')
  await openStep(page, tag, 'Strip and wash')
  await tickButton(page).click()
  await page.getByRole('button', { name: 'Take back' }).click()
  await tickButton(page).waitFor()
  const renders = countRenders(page)
  await tickButton(page).dispatchEvent('click', undefined, soon)
  await page.waitForTimeout(600)
  await tickButton(page).dispatchEvent('click', undefined, soon)
  await settled(page)
  expect(renders).toEqual([])
  await expect(done(page)).toHaveCount(0)
  await tickButton(page).click()
  await expect(done(page)).toBeVisible()
})

/** The server takes what is sent, and the answer does not arrive, until `unroute`. */
const loseAnswers = (page: Page) =>
  page.route('**/api/operations', async (route) => {
    await route.fetch()
    await route.abort('connectionreset')
  })

const keptHere = (page: Page) => page.getByText('Kept here, not yet sent: 1')

/** At a head whose chambers are to be measured next. */
async function atChambers(page: Page, customer: PreparedCustomer): Promise<string> {
  const tag = await headOf(page, customer)
  await openStep(page, tag, 'Measure chambers')
  return tag
}

test('readings whose answer was lost are not entered once more with the tick, after a reload', async ({ page }) => {
  const tag = await atChambers(page, 'Delia Thorn')
  const cc = { 'chamber 1': '63.1', 'chamber 2': '62.9', 'chamber 3': '63.0', 'chamber 4': '63.2' }
  await answer(page, { figures: { 'Chamber volume': cc } })
  await loseAnswers(page)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(keptHere(page)).toBeVisible()
  await page.unroute('**/api/operations')
  await page.reload()
  await expect(keptHere(page)).toHaveCount(0)
  await expect(page.getByText('63.2 (last reading)')).toBeVisible()
  await answer(page, {
    choices: {
      'Valves in while measuring': 'The shop’s checking valves',
      'Plug in while measuring': 'The shop’s checking plug',
    },
  })
  await tickButton(page).click()
  await expect(done(page)).toBeVisible()
  await openHead(page, tag)
  const readings = page.getByRole('region', { name: 'Readings' })
  await readings.locator('summary', { hasText: 'Measure chambers' }).click()
  await expect(readings.getByRole('row', { name: /^Chamber volume chamber 2/ })).toHaveCount(1)
})

test('a lost answer and a reload enter a reading once', async ({ page }) => {
  await atChambers(page, 'Emrys Colt')
  await answer(page, { figures: { 'Chamber volume': { 'chamber 1': '63.1' } } })
  const operations: string[] = []
  page.on('request', (request) => {
    const op = /"id":"([0-9a-f-]{36})"/.exec(request.postData() ?? '')?.[1]
    if (op) operations.push(op)
  })
  await loseAnswers(page)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(keptHere(page)).toBeVisible()
  const tried = operations.length
  await page.unroute('**/api/operations')
  await page.reload()
  // The same operation: the server gives its stored answer and writes nothing more.
  await expect.poll(() => operations.length).toBeGreaterThan(tried)
  expect(new Set(operations).size).toBe(1)
  await expect(keptHere(page)).toHaveCount(0)
  await expect(page.getByText('63.1 (last reading)')).toBeVisible()
})

test('“Keep mine” after a conflict repeats the deed that was refused', async ({ page, browser }) => {
  const tag = await headOf(page, 'Flora Penn')
  await openStep(page, tag, 'Strip and wash')
  // The page does not learn of it by itself.
  await page.route('**/api/changes', (route) => route.abort())
  const other = await (await browser.newContext({ baseURL: process.env.BRASSTAG_E2E_URL })).newPage()
  await signIn(other, 'orla')
  await other.goto(page.url())
  await tickButton(other).click()
  await expect(done(other)).toBeVisible()
  await other.getByRole('button', { name: 'Take back' }).click()
  await expect(tickButton(other)).toBeVisible()

  await page.getByRole('button', { name: 'Start', exact: true }).click()
  const conflict = page.getByRole('alert').filter({ hasText: 'someone else changed this' })
  await expect(conflict).toContainText('Orla')
  await expect(conflict).toContainText('took the tick back')
  await expect(conflict).toContainText(/\d{1,2}:\d\d [AP]M/)
  await expect(conflict).not.toContainText(/\dT\d|Z\b/)
  await conflict.getByRole('button', { name: 'Keep mine' }).click()
  await expect(page.getByText('Started.')).toBeVisible()
  await expect(done(page)).toHaveCount(0)
  await other.context().close()
})

test('errors of a try come at once, each at its cell, and go when it is corrected', async ({ page }) => {
  await atChambers(page, 'Gideon Marl')
  await answer(page, {
    figures: { 'Chamber volume': { 'chamber 1': '63..1', 'chamber 2': '1e9', 'chamber 3': '63.0' } },
  })
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  const refused = page.getByRole('alert').filter({ hasText: 'Not saved' })
  await expect(refused).toContainText('2 fields need a change.')
  const cells = page.getByRole('group', { name: 'Chamber volume', exact: true })
  const cell = (name: string) => cells.getByLabel(name, { exact: true })
  await expect(cell('chamber 1')).toHaveAttribute('aria-invalid', 'true')
  await expect(cell('chamber 2')).toHaveAttribute('aria-invalid', 'true')
  await cell('chamber 1').fill('63.1')
  await expect(cell('chamber 1')).not.toHaveAttribute('aria-invalid', 'true')
  await expect(refused).toContainText('One field needs a change.')
  await cell('chamber 2').fill('62.9')
  await expect(refused).toHaveCount(0)
  await tapAgain(page.getByRole('button', { name: 'Save', exact: true }))
  await expect(page.getByText('Readings saved.')).toBeVisible()
})

test('the address of a step that is not on the route says so, keeps what was typed and leads on', async ({ page }) => {
  const tag = await headOf(page, 'Hester Loame')
  await openStep(page, tag, 'Check in')
  const address = page.url().replace('step=check-in', 'step=straighten')
  const visit = /heads\/([^?]+)/.exec(address)?.[1] ?? ''
  await page.evaluate(
    ([key, draft]) => {
      const person = document.querySelector<HTMLElement>('[data-person]')?.dataset.person
      localStorage.setItem(`brasstag ${person} ${key}`, draft ?? '')
    },
    [
      `step ${visit} straighten   `,
      JSON.stringify({
        shape: 1,
        answers: { 'thickness|intake-1': { text: '4.250', notTaken: null } },
        conditions: {},
        instrumentId: '',
      }),
    ],
  )
  const response = await page.goto(address)
  expect(response?.status()).toBeLessThan(500)
  await expect(page.getByText('is not on the route of this head')).toBeVisible()
  await expect(page.getByRole('region', { name: 'Typed here' })).toContainText('4.250')
  await expect(page.getByRole('link', { name: 'Back to the queue' })).toBeVisible()
  await page.getByRole('link', { name: 'Check in' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Check in' })).toBeVisible()
})
