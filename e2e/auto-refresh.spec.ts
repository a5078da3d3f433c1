import { expect, test, type Page } from '@playwright/test'
import type { PreparedCustomer } from '../tests/setup/prepared-heads'
import { answer, openStep, signIn, tapAgain } from './person'
import { prepared } from './prepared'
import { settled } from './settled'

/** A page follows what others do, and never under the fingers of who is at it. */

const startButton = (page: Page) => page.getByRole('button', { name: 'Start', exact: true })

/** Longer than it takes to ask again, and than a page waits after the last tap. */
const severalTimesMs = 6000

/** Tells the page which change is the newest, and counts how often it asks for its step again. The page gets its own clock. */
async function asTold(page: Page) {
  const told = { newest: 0, draws: 0, asked: 0, answered: 0 }
  await page.clock.install()
  await page.route('**/api/changes', async (route) => {
    told.asked += 1
    await route.fulfill({ json: { newest: told.newest } })
    told.answered += 1
  })
  page.on('request', (request) => {
    if (new URL(request.url()).pathname.endsWith('/step')) told.draws += 1
  })
  return told
}

/** Six seconds go by on the page's clock, and what came of them has begun. */
async function timePasses(page: Page, told: { readonly asked: number; readonly answered: number }): Promise<void> {
  await page.clock.runFor(severalTimesMs)
  await settled(page)
  await expect.poll(() => told.answered).toBe(told.asked)
  await settled(page)
}

/** The page anew, and so far that it asks by itself. */
async function reloaded(page: Page, told: { readonly asked: number; draws: number }): Promise<void> {
  await page.reload()
  await expect(startButton(page)).toBeVisible()
  await expect.poll(() => told.asked).toBeGreaterThan(0)
  told.draws = 0
}

async function atCheckIn(page: Page, customer: PreparedCustomer): Promise<void> {
  await signIn(page, 'dov')
  await openStep(page, prepared(customer).tag, 'Check in')
}

test('what somebody else does comes by itself', async ({ page, browser }) => {
  await atCheckIn(page, 'Ivo Branscombe')
  await expect(startButton(page)).toBeVisible()
  const other = await (await browser.newContext({ baseURL: process.env.BRASSTAG_E2E_URL })).newPage()
  await signIn(other, 'orla')
  await other.goto(page.url())
  await tapAgain(startButton(other))
  await expect(other.getByText('Started.')).toBeVisible()
  await expect(startButton(page)).toHaveCount(0)
  await other.context().close()
})

test('a change is drawn once, and not while a cell is typed in or something is asked', async ({ page }) => {
  await atCheckIn(page, 'Juno Wetherell')
  const told = await asTold(page)
  await reloaded(page, told)
  const before = told.asked
  await timePasses(page, told)
  expect(told).toMatchObject({ draws: 0 })
  expect(told.asked).toBeGreaterThan(before)

  told.newest = 1_000_000
  await timePasses(page, told)
  await expect.poll(() => told.draws).toBe(1)
  await timePasses(page, told)
  expect(told.draws, 'the same change once').toBe(1)

  await answer(page, { words: { 'What came with it': 'Bare' } })
  const cell = page.getByLabel('What came with it').first()
  await cell.focus()
  told.newest += 1
  await timePasses(page, told)
  expect(told.draws, 'a cell is typed in').toBe(1)
  await cell.blur()
  await timePasses(page, told)
  await expect.poll(() => told.draws, 'it was left').toBe(2)
  await expect(cell).toHaveValue('Bare')

  await page.getByRole('button', { name: 'Hold', exact: true }).click()
  await expect(page.getByRole('dialog')).toBeVisible()
  told.newest += 1
  await timePasses(page, told)
  expect(told.draws, 'a dialog is open').toBe(2)
  await page.keyboard.press('Escape')
  await timePasses(page, told)
  await expect.poll(() => told.draws, 'it was shut').toBe(3)
})

test('a page that nobody looks at does not ask', async ({ page }) => {
  await atCheckIn(page, 'Kit Ambler')
  const told = await asTold(page)
  await reloaded(page, told)
  const isHidden = (hidden: boolean) =>
    page.evaluate((value) => void Object.defineProperty(document, 'hidden', { value, configurable: true }), hidden)
  await isHidden(true)
  await settled(page)
  const before = told.asked
  await timePasses(page, told)
  expect(told.asked).toBe(before)
  await isHidden(false)
  await timePasses(page, told)
  await expect.poll(() => told.asked).toBeGreaterThan(before)
})
