import { parse } from 'csv-parse/sync'
import { expect, test, type Page } from '@playwright/test'
import { readPdf } from '../tests/pdf/read-pdf'
import { isSound } from './sound'
import { bookJob, openHead, signIn, signInAtForm, tapAgain } from './person'
import { prepared } from './prepared'

/** From the price line to the paid invoice and the head in the customer's hands; figures worked by hand. */

const money = (page: Page) => page.getByRole('region', { name: 'Prices and payments', exact: true })

async function addLine(page: Page, text: string, each: string, quantity = '1') {
  const part = money(page)
  const form = part.locator('details', { hasText: 'Add a price line' })
  if (!(await form.getByLabel('For', { exact: true }).isVisible())) await form.locator('summary').click()
  await form.getByLabel('For', { exact: true }).fill(text)
  await form.getByLabel('Quantity').fill(quantity)
  await form.getByLabel(/^Each/).fill(each)
  await tapAgain(form.getByRole('button', { name: 'Add the line' }))
  await expect(part.getByRole('region', { name: 'Price lines' }).getByRole('rowheader', { name: text })).toBeVisible()
}

async function returned(page: Page, tag: string) {
  await openHead(page, tag)
  await page.getByRole('button', { name: 'Return as is' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('Why it goes back').fill('The customer sold the engine.')
  await dialog.getByRole('button', { name: 'Return it as it is' }).click()
  await expect(page.getByText('returned as is', { exact: true }).first()).toBeVisible()
}

async function textOf(page: Page, href: string | null): Promise<string> {
  const answer = await page.request.get(href ?? '')
  expect(answer.status()).toBe(200)
  return (await readPdf(new Uint8Array(await answer.body()))).text.replace(/\s+/g, ' ')
}

const booking = {
  customer: 'Amabel Frayne',
  phone: '555-0162',
  casting: 'Harrow wedge 64',
  target: '60',
  preset: 'Cut to size',
}

/** At a desk, on a tablet and on a phone. */
async function isSoundEverywhere(page: Page) {
  const desk = page.viewportSize()
  for (const size of [
    { width: 1024, height: 768 },
    { width: 390, height: 844 },
  ]) {
    await page.setViewportSize(size)
    await isSound(page, `${page.url()} at ${size.width}`)
  }
  if (desk) await page.setViewportSize(desk)
}

test('invoice, payment, hand over; what changes after the invoice is a credit note', async ({ page }) => {
  await signIn(page, 'tamsin')
  const { number, tag } = await bookJob(page, booking)
  const job = `/jobs/${number}`
  await page.goto(job)
  await addLine(page, 'Strip and wash', '$1,045.00')
  await addLine(page, 'Setting up', '72', '1.5')
  const part = money(page)

  // A line is changed with a reason, before the invoice.
  await part.getByRole('button', { name: 'Change Strip and wash' }).click()
  const change = page.getByRole('dialog')
  await change.getByLabel(/^Each/).fill('45')
  await change.getByRole('button', { name: 'Save' }).click()
  await expect(change.getByText('Enter the reason.')).toBeVisible()
  await change.getByLabel('Reason for the change').fill('Typed wrong')
  await tapAgain(change.getByRole('button', { name: 'Save' }))
  await expect(change).toHaveCount(0)
  // 45.00 + 1.5 × 72.00 = 153.00; 8.25 % is 12.6225 → 12.62; 165.62.
  await expect(part).toContainText('$165.62')

  await returned(page, tag)
  await page.goto(job)
  await part.getByRole('button', { name: 'Invoice $165.62' }).click()
  const invoices = part.getByRole('region', { name: 'Invoices' })
  const invoice = invoices.getByRole('link', { name: /^INV-\d{4}$/ })
  await expect(invoice).toBeVisible()
  await expect(part.getByRole('button', { name: /^Change|^Remove/ })).toHaveCount(0)
  const text = await textOf(page, await invoice.getAttribute('href'))
  for (const words of ['Amabel Frayne', 'Strip and wash', '1.5', '$12.62', '$165.62']) expect(text).toContain(words)

  await isSoundEverywhere(page)

  // Nobody but the owner hands it over unpaid.
  await page.goto(`${job}/hand-over`)
  await page.getByLabel('Picked up by').fill('Amabel Frayne')
  await page.getByLabel(/^Bank or side/).fill('not said')
  await page.getByLabel(/^Amount/).fill('')
  await page.getByRole('button', { name: 'Hand over' }).click()
  await expect(page.getByText('The job is not paid in full. Take the payment first.').first()).toBeVisible()

  // More than is owed is asked twice.
  await page.goto(job)
  const pay = part.locator('details', { hasText: 'Take a payment' })
  await pay.getByLabel(/^Amount/).fill('200')
  await pay.getByRole('button', { name: 'Take payment' }).click()
  await expect(pay.getByText(/more than is owed/).first()).toBeVisible()
  await pay.getByLabel(/^Amount/).fill('100')
  await pay.getByLabel('Paid by').selectOption('card')
  await tapAgain(pay.getByRole('button', { name: 'Take payment' }))
  const receipt = part.getByRole('link', { name: /^Print receipt/ })
  await expect(receipt).toBeVisible()
  expect(await textOf(page, await receipt.getAttribute('href'))).toContain('$65.62')

  // 30.00 off the wash: 32.48 with tax (2.475 → 2.48); 33.14 is left.
  await invoices.getByRole('link', { name: /^Write a credit note/ }).click()
  await isSoundEverywhere(page)
  await page.getByLabel(/^Strip and wash: credit/).fill('45.01')
  await page.getByLabel('Reason', { exact: false }).fill('Came in clean')
  await page.getByRole('button', { name: 'Write the credit note' }).click()
  await expect(page.getByText('This is more than is left of the line.').first()).toBeVisible()
  await page.getByLabel(/^Strip and wash: credit/).fill('30')
  await tapAgain(page.getByRole('button', { name: 'Write the credit note' }))
  const note = page.getByRole('link', { name: /^Print credit note/ })
  await expect(note).toBeVisible()
  expect(await textOf(page, await note.getAttribute('href'))).toContain('$32.48')

  await page.goto(`${job}/hand-over`)
  await expect(page.getByText('To pay: $33.14')).toBeVisible()
  await isSoundEverywhere(page)
  await page.getByLabel('Picked up by').fill('Amabel Frayne')
  await page.getByLabel(/^Bank or side/).fill('not said')
  await expect(page.getByLabel(/^Amount/)).toHaveValue('33.14')
  await page.getByRole('button', { name: 'Hand over' }).click()
  await expect(page.getByText('Handed over to Amabel Frayne')).toBeVisible()
  await expect(page.getByText('Paid in full.')).toBeVisible()
  await expect(page.getByText(/We owe|Not paid/)).toHaveCount(0)
})

test('the owner lets a job go unpaid: it stays under unpaid; the books have it', async ({ page }) => {
  // Files for the bookkeeper ask for a password that was typed lately.
  await signInAtForm(page, 'orla')
  const { number, tag } = prepared('Piran Stowell')
  await page.goto(`/jobs/${number}`)
  await addLine(page, 'Look it over', '50')
  await returned(page, tag)
  await page.goto(`/jobs/${number}/hand-over`)
  await page.getByLabel('Picked up by').fill('Piran Stowell')
  await page.getByLabel(/^Bank or side/).fill('not said')
  await page.getByLabel(/^Amount/).fill('')
  await page.getByLabel('Reason to hand over unpaid').fill('Pays on Friday')
  await page.getByRole('button', { name: 'Hand over' }).click()
  await expect(page.getByText('Handed over to Piran Stowell')).toBeVisible()
  await page.goto('/counter')
  await page.getByRole('link', { name: 'Unpaid' }).click()
  const row = page.getByRole('row', { name: new RegExp(number) })
  // 50.00 and 8.25 %: 4.125 → 4.13.
  await expect(row).toContainText('$54.13')
  await expect(row).toContainText('Pays on Friday')
  // A line of a job that has left is not taken off.
  await page.goto(`/jobs/${number}`)
  await money(page).getByRole('button', { name: 'Remove Look it over' }).click()
  await page.getByRole('dialog').getByLabel('Reason').fill('x')
  await page.getByRole('dialog').getByRole('button', { name: 'Remove', exact: true }).click()
  await expect(page.getByText(/was handed over/).first()).toBeVisible()
  await page.keyboard.press('Escape')
  await money(page).getByRole('button', { name: 'Invoice $54.13' }).click()
  await expect(money(page).getByRole('region', { name: 'Invoices' })).toBeVisible()

  await page.goto('/back-room/bookkeeper')
  const today = new Date().toISOString().slice(0, 10)
  const later = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10)
  const answer = await page.request.get(`/api/books/invoices?from=${today.slice(0, 8)}01&to=${later}`)
  expect(answer.headers()['content-type']).toContain('text/csv')
  const rows = parse(await answer.text(), { bom: true, columns: true }) as Record<string, string>[]
  expect(rows.find((one) => one.Customer === 'Piran Stowell')).toMatchObject({ Total: '54.13', Tax: '4.13' })

  // On the same day the owner takes the hand-over back: the head can be handed over again.
  await page.goto(`/jobs/${number}`)
  const takeBack = page.getByRole('button', { name: /^Take back the hand-over/ })
  await takeBack.click()
  await page.getByRole('dialog').getByLabel('Reason').fill('Still on our shelf')
  await page.getByRole('dialog').getByRole('button', { name: 'Take it back' }).click()
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await expect(takeBack).toHaveCount(0)
  await page.goto(`/jobs/${number}/hand-over`)
  await expect(page.getByLabel('Picked up by')).toBeVisible()
  await signIn(page, 'tamsin')
  expect((await page.request.get(`/api/books/invoices?from=${today}&to=${later}`)).status()).toBe(403)
})
