import { expect, type Cookie, type Locator, type Page } from '@playwright/test'
import { keyOf } from '../lib/core/route/keys'
import { stepTable } from '../lib/core/route/steps'
import { demoPassword } from '../lib/demo/people'
import { allPrepared } from './prepared'

/** What a person does in front of the app, in the words they read there. */

/** Whoever is at the page is this person from now on. The run signed each of them in once (`start-demo.ts`). */
export async function signIn(page: Page, name: string): Promise<void> {
  const all = JSON.parse(process.env.BRASSTAG_E2E_SIGNED_IN ?? '{}') as Readonly<Record<string, Cookie[]>>
  const cookies = all[name]
  if (!cookies) return signInAtForm(page, name)
  await page.context().clearCookies()
  await page.context().addCookies(cookies)
}

export async function signInAtForm(page: Page, name: string, server = ''): Promise<void> {
  await page.context().clearCookies()
  await page.goto(`${server}/sign-in`)
  await page.getByLabel('Name').fill(name)
  await page.getByLabel('Password').fill(demoPassword)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page).not.toHaveURL(/sign-in/)
}

export type Booking = {
  readonly customer: string
  readonly phone: string
  readonly casting: string
  readonly target: string
  readonly preset: string
  /** Lines of work beside those of the preset. */
  readonly also?: readonly string[]
  readonly overheated?: boolean
  readonly engine?: Readonly<Record<string, string>>
  readonly layout?: 'inline' | 'V'
}

/** Books a job with one head and gives back its number and the head's tag. */
export async function bookJob(page: Page, booking: Booking): Promise<{ number: string; tag: string }> {
  await page.goto('/counter/book')
  const customer = page.getByRole('region', { name: 'Customer' })
  await customer.getByLabel('Name').fill(booking.customer)
  await customer.getByLabel('Phone').fill(booking.phone)
  const casting = page.getByLabel('Casting', { exact: true })
  const option = casting.locator('option', { hasText: booking.casting })
  await casting.selectOption((await option.getAttribute('value')) ?? '')
  if (booking.target !== '') await page.getByLabel(/^Target chamber/).fill(booking.target)
  if (booking.overheated) {
    await page.locator('summary', { hasText: 'More about this head' }).click()
    await page.getByLabel('Was overheated').check()
  }
  await choose(page, 'Kind of job', booking.preset)
  if (booking.also) {
    await page.locator('summary', { hasText: 'Change the work line by line' }).click()
    for (const line of booking.also) await page.getByRole('checkbox', { name: line, exact: true }).check()
  }
  if (booking.engine) {
    await page.locator('summary', { hasText: /^Engine/ }).click()
    if (booking.layout) await choose(page, 'Layout', booking.layout)
    for (const [label, text] of Object.entries(booking.engine)) await page.getByLabel(label, { exact: true }).fill(text)
  }
  const number = await pressBook(page)
  const plate = page.getByRole('main').getByText(/T-\d{4,}/)
  const tag = /T-\d{4,}/.exec(await plate.first().innerText())?.[0] ?? ''
  return { number, tag }
}

const jobPage = /\/jobs\/(\d\d-\d{4})/

/** Books what the form holds and gives back its number. Whoever and whatever it asks about is another. */
export async function pressBook(page: Page): Promise<string> {
  const refused = page.getByRole('alert').filter({ hasText: 'Not booked yet' })
  const no = page.getByRole('button', { name: /^No, (somebody else|another head)$/ })
  const number = () => jobPage.exec(page.url())?.[1] ?? ''
  await page.getByRole('button', { name: 'Book the job' }).click()
  await expect(async () => {
    if (number() !== '') return
    // Another test may book the same customer meanwhile: then it is asked about that one too.
    if (await refused.isVisible()) {
      if ((await no.count()) > 0) await no.first().click({ timeout: 1000 })
      await expect(refused).toBeHidden({ timeout: 500 })
      await tapAgain(page.getByRole('button', { name: 'Book the job' }))
    }
    await page.waitForURL(jobPage, { timeout: 1500 })
  }).toPass({ timeout: 60_000, intervals: [100] })
  return number()
}

/** The queue of a station is drawn: its lists, or that there is nothing. */
export const queueStands = (page: Page): Promise<void> =>
  expect(page.locator('main').getByText(/^(Ready: \d+|Nothing is ready\.|No heads at this station\.)$/)).toBeVisible()

/** Opens a head's record by its tag, whatever station the device is at. */
export async function openHead(page: Page, tag: string): Promise<void> {
  await page.goto(`/find?q=${tag}`)
  await page.waitForURL(/\/heads\//)
}

/** At the form that sends an angle cut out: the counter records the customer's yes to it. */
export async function recordYes(page: Page, by: string): Promise<void> {
  const open = page.getByText('The customer has not accepted this cut yet', { exact: true })
  await expect(open).toBeVisible()
  await page.getByText(/^The customer accepts version \d+$/).click()
  await page.getByLabel(/^Who said yes/).fill(by)
  await page.getByLabel(/^How/).first().fill('by phone')
  await page.getByRole('button', { name: 'Note the yes' }).click()
  await expect(open).toHaveCount(0)
}

/** A tag's head in the shop, as the address of its steps names it; of others than those prepared once a step was opened. */
const visitOf = new Map(Object.values(allPrepared()).map(({ tag, visit }) => [tag, visit]))

/** Opens a step of a head: by the step's own address where that is known, else by its tag and the link on its route. */
export async function openStep(page: Page, tag: string, step: string): Promise<void> {
  const address = addressOf(tag, step)
  if (address) await page.goto(address)
  else {
    await openHead(page, tag)
    await page.getByRole('region', { name: 'Route' }).getByRole('link', { name: step, exact: true }).first().click()
  }
  await expect(page.getByRole('heading', { level: 1, name: step })).toBeVisible()
  const visit = /\/stations\/[^/]+\/heads\/([^?]+)/.exec(page.url())?.[1]
  if (visit) visitOf.set(tag, visit)
}

/** Steps that come with an outside order are found by their link alone. */
function addressOf(tag: string, step: string): string | undefined {
  const visit = visitOf.get(tag)
  const row = stepTable.find(({ label }) => label === step)
  if (!visit || !row || row.station === 'outside' || row.ref.startsWith('arrival-')) return undefined
  const { stepId, occurrence } = keyOf(row.ref)
  const query = new URLSearchParams({ step: stepId, ...(occurrence && { run: occurrence }) })
  return `/stations/${row.station}/heads/${visit}?${query}`
}

export async function choose(page: Page, question: string, answer: string): Promise<void> {
  await page.getByRole('radiogroup', { name: question }).getByText(answer, { exact: true }).click()
}

export type Answers = {
  /** Group of figures → cell → text. */
  readonly figures?: Readonly<Record<string, Readonly<Record<string, string>>>>
  /** Column of the valve sheet → what all intake and all exhaust valves are filled with. */
  readonly valves?: Readonly<Record<string, { readonly intake: string; readonly exhaust: string }>>
  readonly choices?: Readonly<Record<string, string>>
  readonly words?: Readonly<Record<string, string>>
  /** Cells that could not be had → why. */
  readonly notTaken?: Readonly<Record<string, Readonly<Record<string, string>>>>
}

export async function answer(page: Page, answers: Answers): Promise<void> {
  for (const [group, cells] of Object.entries(answers.figures ?? {})) {
    const region = page.getByRole('group', { name: group, exact: true })
    for (const [cell, text] of Object.entries(cells)) await region.getByLabel(cell, { exact: true }).fill(text)
  }
  for (const [column, alike] of Object.entries(answers.valves ?? {})) {
    for (const [port, text] of Object.entries(alike)) {
      const cell = page.getByLabel(`All ${port} alike, ${column}`, { exact: true })
      await (column === 'Seat angles' ? cell.selectOption(text) : cell.fill(text))
    }
  }
  for (const [group, cells] of Object.entries(answers.notTaken ?? {})) {
    const region = page.getByRole('group', { name: group, exact: true })
    for (const [cell, why] of Object.entries(cells)) {
      await region.getByRole('button', { name: `Not taken: ${cell}` }).click()
      await region.getByLabel(new RegExp(`${cell}.*not taken`, 'i')).fill(why)
    }
  }
  for (const [question, text] of Object.entries(answers.choices ?? {})) await choose(page, question, text)
  for (const [label, text] of Object.entries(answers.words ?? {}))
    await page.getByLabel(label, { exact: true }).fill(text)
}

/** Answers what a step owes and ticks it. */
export async function doStep(page: Page, tag: string, step: string, answers: Answers = {}): Promise<void> {
  await openStep(page, tag, step)
  await answer(page, answers)
  const save = page.getByRole('button', { name: /^(Save and done|Done)$/ })
  const done = page.getByRole('status').filter({ hasText: 'Done.' })
  await save.click()
  const again = page.getByLabel(/^Again: /)
  await expect(done.or(again.first()).first()).toBeVisible()
  if ((await again.count()) > 0) {
    await typeAgain(page)
    await tapAgain(save)
  }
  await expect(done).toBeVisible()
}

/** Every figure that is asked about is meant as it is. */
export async function typeAgain(page: Page): Promise<void> {
  for (const cell of await page.getByLabel(/^Again: /).all()) {
    const label = (await cell.evaluate((input: HTMLInputElement) => input.labels?.[0]?.textContent)) ?? ''
    const group = cell.locator('xpath=ancestor::*[@role="group"][1]')
    await cell.fill(await group.getByLabel(label.replace('Again: ', ''), { exact: true }).inputValue())
  }
}

/** A button takes no second tap within 400 ms of the first. No person is as fast as a browser test: the press is long. */
export const tapAgain = (button: Locator): Promise<void> => button.click({ delay: 450 })

/** The text beside a label in a list of figures. */
export const figureOf = (page: Page, label: string) =>
  page
    .locator('dl > div')
    .filter({ has: page.getByText(label, { exact: true }) })
    .locator('dd')
