import { expect, test, type Browser, type Page } from '@playwright/test'
import { readPdf } from '../tests/pdf/read-pdf'
import type { PreparedCustomer } from '../tests/setup/prepared-heads'
import { doStep, openHead, openStep, signIn } from './person'
import { prepared } from './prepared'
import { settled } from './settled'
import { isSound } from './sound'
import { withoutScripts } from './without-scripts'

/**
 * A finding from the bench to the customer's phone and back: reported, priced, asked, answered on the private link. The
 * customer has a browser of their own in which nobody is signed in.
 */

/** Something is found on a head at a step that it waits for. */
async function found(page: Page, customer: PreparedCustomer, step: string, what: string) {
  const job = prepared(customer)
  await signIn(page, 'dov')
  await openStep(page, job.tag, step)
  await page.getByRole('button', { name: 'Finding', exact: true }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByRole('textbox').fill(what)
  await dialog.getByRole('button', { name: /report/i }).click()
  await expect(dialog).toBeHidden()
  return job
}

/** Prices it at the counter, asks, and makes a link: gives back where it leads. */
async function ask(page: Page, what: string, terms: { price: string; tax: string; work?: string }) {
  await signIn(page, 'tamsin')
  await page.goto('/counter')
  await page.getByRole('link', { name: what }).click()
  await expect(page.getByText('Not on the customer’s link yet.')).toBeVisible()
  await price(page, terms)
  await page.getByRole('button', { name: 'Make a link' }).click()
  const link = await linkOn(page)
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
  await page.getByRole('button', { name: 'Copy the link' }).click()
  await expect(page.getByText('Copied.')).toBeVisible()
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain(link)
  return link
}

async function price(page: Page, { price, tax, work }: { price: string; tax: string; work?: string }) {
  await page.getByLabel(/^Price/).fill(price)
  await page.getByLabel('Tax', { exact: true }).selectOption({ label: tax === '' ? 'No tax' : `Sales tax, ${tax} %` })
  await page.getByLabel('How it was asked').fill('link')
  if (work) {
    await page.locator('summary', { hasText: 'Work that a yes adds' }).click()
    await page.getByLabel(work, { exact: true }).check()
  }
  await page.getByRole('button', { name: 'Asked, no answer yet' }).click()
  await expect(page.getByText('The customer can answer yes or no on the link.')).toBeVisible()
}

async function linkOn(page: Page): Promise<string> {
  const address = page.getByText(/\/s\/[\w-]{32}/).first()
  return /\/s\/[\w-]{32}/.exec(await address.innerText())?.[0] ?? ''
}

async function customerAt(browser: Browser, path: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const page = await context.newPage()
  await page.goto(path)
  return page
}

/** The question, then the choice in words, then sent. */
async function say(page: Page, answer: 'yes' | 'no', name: string): Promise<void> {
  await page.getByLabel('Your name').fill(name)
  await page.getByRole('button', { name: answer === 'yes' ? 'Yes, do it' : 'No, leave it' }).click()
  const confirm = page.getByRole('group', { name: `Your answer is ${answer}. Send it?` })
  await expect(confirm).toContainText(`Answered by ${name}.`)
  await confirm.getByRole('button', { name: `Send my ${answer}` }).click()
}

test('yes on the link: the work is on the route, the price on the account, the counter sees it by itself', async ({
  page,
  browser,
}) => {
  test.setTimeout(180_000)
  const what = 'Guides worn bell-mouthed at 2'
  const { tag, number } = await found(page, 'Wilma Harrow', 'Strip and wash', what)
  const link = await ask(page, what, { price: '120', tax: '8.25', work: 'Guides' })
  await page.goto('/counter')
  await expect(page.getByText('link, no answer yet').first()).toBeVisible()

  const customer = await customerAt(browser, link)
  const question = customer.getByRole('article', { name: what })
  // 120.00 at 8.25 %: 9.90 of tax.
  await expect(question).toContainText('$129.90')
  await expect(question).toContainText('$9.90 is tax')
  await expect(question).toContainText('Work added: Guides.')

  // By keyboard alone: no name is said at the field; the way back sends nothing.
  await question.getByRole('button', { name: 'Yes, do it' }).focus()
  await customer.keyboard.press('Enter')
  await expect(customer.getByLabel('Your name')).toBeFocused()
  await expect(question).toContainText('Write your name first')
  await customer.keyboard.type('Wilma Harrow')
  await customer.keyboard.press('Tab')
  await customer.keyboard.press('Tab')
  await customer.keyboard.press('Enter')
  await expect(customer.getByRole('heading', { name: 'Your answer is no. Send it?' })).toBeFocused()
  await isSound(customer)
  await customer.getByRole('button', { name: 'Go back' }).click()
  await say(customer, 'yes', 'Wilma Harrow')
  const said = customer.getByText(/^You said yes on .*\(Wilma Harrow\)\./)
  await expect(said).toBeFocused()
  await isSound(customer)
  await customer.reload()
  await expect(said).toBeVisible()
  await expect(customer.getByRole('button', { name: /^(Yes|No),/ })).toHaveCount(0)

  // The counter's page was open all the while.
  const list = page.getByRole('region', { name: 'Answered on their links' })
  await expect(list.getByText(/answered yes on the link by Wilma Harrow/)).toBeVisible()
  await page.goto(`/jobs/${number}`)
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText('answered yes on the link by Wilma Harrow')
  await expect(page.getByRole('row', { name: new RegExp(what) })).toContainText('$120.00')
  await openHead(page, tag)
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText('answered yes on the link by Wilma Harrow')
  await expect(
    page.getByRole('region', { name: 'Route' }).getByRole('link', { name: 'Guides', exact: true }),
  ).toBeVisible()
})

test('no on the link: nothing is added, and job sheet and spec sheet say declined', async ({ page, browser }) => {
  test.setTimeout(240_000)
  const what = 'Exhaust seat 4 pitted'
  const { tag, number } = await found(page, 'Tobin Sayle', 'Final inspection', what)
  const link = await ask(page, what, { price: '95', tax: '', work: 'Guides' })
  const customer = await customerAt(browser, link)
  await say(customer, 'no', 'Tobin Sayle')
  await expect(customer.getByText(/^You said no on .*\(Tobin Sayle\)\./)).toBeVisible()

  const declined = new RegExp(`${what}.*declined by Tobin Sayle, on the link`)
  const jobSheet = await page.request.get(`/api/papers/job-sheet/${number}`)
  expect((await readPdf(new Uint8Array(await jobSheet.body()))).text.replaceAll(/\s+/g, ' ')).toMatch(declined)
  await page.goto(`/jobs/${number}`)
  await expect(page.getByRole('row', { name: new RegExp(what) })).toHaveCount(0)

  await signIn(page, 'dov')
  await openHead(page, tag)
  const route = page.getByRole('region', { name: 'Route' })
  await expect(route.getByRole('link', { name: 'Springs', exact: true })).toBeVisible()
  await expect(route.getByRole('link', { name: 'Guides', exact: true })).toHaveCount(0)
  await doStep(page, tag, 'Final inspection', { choices: { 'Final inspection': 'Passes' } })
  await signIn(page, 'orla')
  await openHead(page, tag)
  await page.getByRole('button', { name: 'Release', exact: true }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Release it' }).click()
  await expect(page.getByRole('link', { name: 'Spec sheet (PDF)' })).toBeVisible()

  await customer.reload()
  await expect(customer.getByRole('region', { name: 'Declined' })).toContainText(declined)
  const paper = await customer.getByRole('link', { name: /^Spec sheet of/ }).getAttribute('href')
  const spec = await customer.request.get(paper ?? '')
  expect(spec.headers()['cache-control']).toBe('no-store')
  expect((await readPdf(new Uint8Array(await spec.body()))).text.replaceAll(/\s+/g, ' ')).toMatch(declined)
})

test('what changed meanwhile is shown beside what was read; a dead link answers nothing', async ({ page, browser }) => {
  test.setTimeout(180_000)
  const what = 'Spring seat cut crooked'
  const { number } = await found(page, 'Linnet Orme', 'Strip and wash', what)
  const link = await ask(page, what, { price: '60', tax: '' })
  const customer = await customerAt(browser, link)
  await expect(customer.getByRole('article', { name: what })).toContainText('$60.00')
  await page.reload()
  await price(page, { price: '75.50', tax: '' })
  await expect(page.getByText('$75.50.')).toBeVisible()

  await say(customer, 'yes', 'Linnet Orme')
  const notSent = customer.getByRole('status').filter({ hasText: 'We changed this question' })
  await expect(notSent).toContainText('What you read')
  await expect(notSent).toContainText('$60.00.')
  await expect(notSent).toContainText('$75.50.')
  await isSound(customer)
  await notSent.getByRole('button', { name: 'Show it as it is now' }).click()
  await expect(customer.getByText('$75.50', { exact: true })).toBeVisible()

  // What is sent goes with the link's token; from another site, or with a finding of nobody, it is turned away.
  const sent = customer.waitForRequest((request) => request.method() === 'POST')
  await page.goto(`/jobs/${number}/link`)
  await page
    .getByRole('button', { name: /^Revoke/ })
    .first()
    .click()
  await expect(page.getByText(/revoked/)).toBeVisible()
  const refused = customer.waitForResponse((response) => response.request().method() === 'POST')
  await say(customer, 'yes', 'Linnet Orme')
  expect((await refused).status()).toBe(404)
  await expect(customer.getByRole('heading', { name: 'This link does not work' })).toBeVisible()
  expect((await customer.goto(link))?.status()).toBe(404)
  const request = await sent

  // A new link to the same job answers, but not for another site, and not for a finding that is not its own.
  await page.getByRole('button', { name: 'Make a link' }).click()
  const open = await linkOn(page)
  const token = open.slice('/s/'.length)
  const body = (request.postData() ?? '').replace(/"token":"[\w-]+"/, `"token":"${token}"`)
  const headers = {
    'next-action': request.headers()['next-action'] ?? '',
    'content-type': 'text/plain;charset=UTF-8',
  }
  const post = (data: string, origin: string) => customer.request.post(open, { data, headers: { ...headers, origin } })
  const here = new URL(customer.url()).origin
  expect((await post(body, 'https://elsewhere.example')).status()).toBe(403)
  const nobody = '0190a0a0-0000-7000-8000-000000000000'
  expect((await post(body.replace(/"findingId":"[\w-]+"/, `"findingId":"${nobody}"`), here)).status()).toBe(404)
  await customer.goto(open)
  await expect(customer.getByRole('button', { name: 'Yes, do it' })).toBeVisible()
  expect((await post(body, here)).status()).toBe(200)
  await customer.reload()
  await expect(customer.getByText(/^You said yes on/)).toBeVisible()
})

for (const scheme of ['light', 'dark'] as const) {
  test(`the demo’s open question on the link, ${scheme}: sound on a phone and at a desk`, async ({ page, browser }) => {
    test.setTimeout(120_000)
    await signIn(page, 'tamsin')
    await page.goto('/counter')
    await page.getByRole('link', { name: /^Guides 2 and 3 exhaust worn bell-mouthed/ }).click()
    await page.getByRole('button', { name: 'Make a link' }).click()
    const link = await linkOn(page)
    await isSound(page)
    for (const viewport of [
      { width: 390, height: 844 },
      { width: 1280, height: 800 },
    ]) {
      const context = await browser.newContext({ viewport, colorScheme: scheme })
      const customer = await context.newPage()
      // On a slow phone a name is typed before the page listens.
      const letGo = await withoutScripts(customer)
      await customer.goto(link, { waitUntil: 'commit' })
      await customer.getByLabel('Your name').fill('Linnet Orme')
      // A tap now would do nothing.
      await expect(customer.getByRole('button', { name: 'Yes, do it' })).toBeDisabled()
      letGo()
      await settled(customer)
      await expect(customer.getByRole('button', { name: 'Yes, do it' })).toBeVisible()
      await isSound(customer)
      await customer.getByRole('button', { name: 'No, leave it' }).click()
      await expect(customer.getByText('Answered by Linnet Orme.')).toBeVisible()
      await context.close()
    }
  })
}
