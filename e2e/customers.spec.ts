import { expect, test } from '@playwright/test'
import { signIn } from './person'
import { fitsItsWidth } from './sound'

test('a customer is found by words the other way round, changed, and a list is looked at before it is taken', async ({
  page,
}) => {
  await signIn(page, 'orla')
  await page.goto('/counter')
  await page.getByRole('searchbox').fill('pym halv')
  await page.getByRole('link', { name: /^Halvard Pym .*customer$/ }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Halvard Pym' })).toBeVisible()
  await expect(page.getByRole('region', { name: 'Jobs' }).first()).toContainText('26-0003')

  await page.getByRole('link', { name: 'Change', exact: true }).click()
  await page.getByLabel('Name').fill('Halvard Pym-Oakes')
  await page.getByLabel('Other phone').fill('ask for Wren, 212-555-0188')
  await page.getByRole('button', { name: 'Save' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Halvard Pym-Oakes' })).toBeVisible()
  await expect(page.getByRole('link', { name: /ask for Wren/ })).toHaveAttribute('href', 'tel:+12125550188')

  await page.goto('/customers/import')
  await page.getByLabel('Table').fill('Who,Cell\nAda Quill,212-555-0150\n,212-555-0151\nH. Pym,212 555 0188')
  await page.getByRole('button', { name: 'Check the list' }).click()
  // "Who" is no heading that is known: the name's column is chosen.
  await expect(page.getByText('0 to import, 3 with errors, 0 already known.')).toBeVisible()
  await page.getByLabel('Who').selectOption('Name')
  await expect(page.getByText('1 to import, 1 with errors, 1 already known.')).toBeVisible()
  await expect(page.getByText('On record as Halvard Pym-Oakes: same phone number')).toBeVisible()
  await page.getByRole('button', { name: 'Import 1 customer' }).click()
  await expect(page.getByText('Imported 1. Left out: 1 with errors, 1 already known.')).toBeVisible()
  await page.goto('/customers?q=quill')
  await expect(page.getByRole('link', { name: 'Ada Quill' })).toBeVisible()
})

test('two records of one person are merged, and the merge is undone', async ({ page }) => {
  await signIn(page, 'orla')
  await page.goto('/customers/import')
  await page.getByLabel('Table').fill('Name,Phone\nMabel Orrin,212-555-0160\nM. Orrin,212-555-0161')
  await page.getByRole('button', { name: 'Check the list' }).click()
  await page.getByRole('button', { name: 'Import 2 customers' }).click()
  await expect(page.getByText(/^Imported 2\./)).toBeVisible()

  await page.goto('/customers?q=orrin')
  await page.getByRole('link', { name: 'Mabel Orrin' }).click()
  await page.getByRole('link', { name: 'Merge with another' }).click()
  await page.getByLabel('Name or phone of the other record').fill('orrin')
  await page.getByRole('main').getByRole('button', { name: 'Search' }).click()
  await page.getByRole('link', { name: 'M. Orrin' }).click()
  await page.getByLabel('Reason').fill('Same person, booked twice')
  await page.getByRole('button', { name: 'Merge', exact: true }).click()
  const merged = page.getByRole('region', { name: 'Merged records' })
  await expect(merged).toContainText('M. Orrin')
  await expect(merged).toContainText('Same person, booked twice')
  const record = page.url()
  const rows = page.getByRole('main').getByRole('link', { name: /Orrin/ })
  await page.goto('/customers?q=orrin')
  await expect(rows).toHaveCount(1)

  await page.goto(record)
  await merged.getByRole('button', { name: 'Undo' }).click()
  await expect(merged).toHaveCount(0)
  await page.goto('/customers?q=orrin')
  await expect(rows).toHaveCount(2)
})

test('the work in hand, with a head that has no tag, fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await signIn(page, 'tamsin')
  await page.goto('/counter')
  await expect(page.getByText(/^no tag yet/).first()).toBeVisible()
  await fitsItsWidth(page)
})
