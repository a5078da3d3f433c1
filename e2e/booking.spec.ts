import { expect, test, type Locator, type Page } from '@playwright/test'
import { signIn } from './person'

/** Counts what a person does: a tap on a control, a field that is typed into. A list costs two: opened, and picked from. */
function counted() {
  const done = { taps: 0, typed: 0 }
  return {
    done,
    tap: async (control: Locator) => {
      done.taps += 1
      await control.click()
    },
    type: async (field: Locator, text: string) => {
      done.typed += 1
      await field.fill(text)
    },
    pick: async (list: Locator, label: string) => {
      done.taps += 2
      await list.selectOption({ label })
    },
  }
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })

test('a new pair, flat and angle with prices, in 12 taps and 6 typed fields; then its papers', async ({ page }) => {
  await signIn(page, 'tamsin')
  await page.goto('/counter/book')
  const { done, tap, type, pick } = counted()
  await type(page.getByLabel(/^Name/), 'Wenna Tolgus')
  await type(page.getByLabel(/^Phone/), '(212) 555-0172')
  await pick(page.getByLabel('Casting', { exact: true }), 'Harrow wedge 64, nominal 64.0 cc')
  await tap(button(page, 'Make it a pair'))
  await type(page.getByLabel(/^Target chamber/), '58')
  await tap(page.getByRole('checkbox', { name: 'Angle cut', exact: true }))
  await tap(button(page, 'Add prices of the ordered work'))
  await type(page.getByLabel(/^Deposit, /), '100')
  await type(page.getByLabel(/^Promise date/), '2099-01-12')
  const total = page.locator('form').getByRole('status').filter({ hasText: 'Total' })
  await expect(total).toContainText('Deposit $100.00')
  await expect(total).toBeInViewport()
  await expect(button(page, 'Book the job')).toBeInViewport()
  const amount = /Total\s*(\$[\d,.]+)/.exec(await total.innerText())?.[1] ?? 'none'
  await tap(button(page, 'Book the job'))
  await page.waitForURL(/\/jobs\/\d\d-\d{4}/)
  expect(done.taps).toBeLessThanOrEqual(12)
  expect(done.typed).toBeLessThanOrEqual(6)

  const lines = page.getByRole('table', { name: 'Price lines' })
  for (const text of ['Flat cut', 'Angle cut']) {
    const line = lines.getByRole('row').filter({ has: page.getByRole('rowheader', { name: new RegExp(text, 'i') }) })
    await expect(line.getByRole('cell').nth(0)).toHaveText('2')
  }
  await expect(page.getByRole('region', { name: 'Prices and payments' })).toContainText(amount)
  const booked = page.getByRole('status').filter({ hasText: 'is booked' })
  const papers = ['Print the job sheet', 'Print tag labels', 'Print the claim ticket', /^Print receipt /]
  for (const name of papers) {
    const href = await booked.getByRole('link', { name }).getAttribute('href')
    const paper = await page.request.get(href ?? '')
    expect([paper.status(), paper.headers()['content-type']]).toEqual([200, 'application/pdf'])
  }
})

test('each tab keeps its own draft; what a closed tab left is offered', async ({ page: first, context }) => {
  await signIn(first, 'tamsin')
  const nameIn = (page: Page) => page.getByLabel(/^Name/)
  await first.goto('/counter/book')
  await nameIn(first).fill('Perran Vosper')
  const second = await context.newPage()
  await second.goto('/counter/book')
  await expect(nameIn(second)).toHaveValue('')
  await nameIn(second).fill('Loveday Tippett')
  // Another tab that is open is not offered.
  await expect(second.getByRole('button', { name: 'Take up' })).toHaveCount(0)
  await first.reload()
  await expect(nameIn(first)).toHaveValue('Perran Vosper')
  await second.reload()
  await expect(nameIn(second)).toHaveValue('Loveday Tippett')
  await first.close()
  const third = await context.newPage()
  await third.goto('/counter/book')
  const offer = third.getByRole('listitem').filter({ hasText: 'Perran Vosper, 1 head' })
  await expect(nameIn(third)).toHaveValue('')
  await offer.getByRole('button', { name: 'Take up' }).click()
  await expect(nameIn(third)).toHaveValue('Perran Vosper')
  await expect(offer).toHaveCount(0)
})
