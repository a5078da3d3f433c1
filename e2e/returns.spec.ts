import { expect, test } from '@playwright/test'
import { answer, openHead, pressBook, signIn } from './person'
import { prepared } from './prepared'

/** Heads that come back: from a vendor one by one, from the customer a second time, and out again as they were. */

test('one of two heads comes back from the vendor, the other stays out and is late', async ({ page }) => {
  await signIn(page, 'dov')
  await page.goto('/t/T-0404')
  await page.getByRole('link', { name: /out$/ }).first().click()
  await expect(page.getByRole('region', { name: 'Receive' })).toBeVisible()
  await page.getByRole('group', { name: 'Heads received' }).getByLabel('T-0405').uncheck()
  await page.getByRole('button', { name: 'Receive', exact: true }).click()
  const heads = page.getByRole('region', { name: 'Heads' }).getByRole('listitem')
  await expect(heads.filter({ hasText: 'T-0404' }).first()).toContainText('back')
  // Nobody has looked yet: what was asked for is not done because it came back.
  await expect(heads.filter({ hasText: 'T-0404' }).first()).toContainText('Angle cut: not confirmed')
  await expect(heads.filter({ hasText: 'T-0405' }).first()).toContainText('still out')

  await page.goto('/away')
  const late = page.getByRole('listitem').filter({ hasText: 'T-0405' }).first()
  await expect(late).toContainText(/late/)
  await openHead(page, 'T-0404')
  await expect(page.getByRole('region', { name: 'Route' })).toContainText('Arrival check')
  await expect(page.getByText('in house').first()).toBeVisible()
  await openHead(page, 'T-0405')
  await expect(page.getByText('away', { exact: true }).first()).toBeVisible()
})

test('a used head at its thickness limit is refused a further cut, with the figures', async ({ page }) => {
  // 4.132 in thick, of which .118 is gone already.
  const { tag } = prepared('Corin Halloway')
  await signIn(page, 'dov')
  await openHead(page, tag)
  await page.getByRole('link', { name: 'Cut plan' }).first().click()
  // 4 cc at 6 thou per cc are about 24 thou: 4.132 less that is under the 4.130 in that must stay.
  const preview = page.getByRole('region', { name: 'What this cut does' })
  await expect(preview).toContainText(new RegExp(`${tag} would be left 4\\.10[78] in thick; the minimum is 4\\.130 in`))
  await page.getByRole('button', { name: /^Keep/ }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'the minimum is 4.130 in' })).toBeVisible()
  await expect(page.getByRole('region', { name: 'The plan now' })).toHaveCount(0)
})

test('a head that was here before comes back: both visits, cause and payer, and all metal gone on one page', async ({
  page,
}) => {
  await signIn(page, 'tamsin')
  await page.goto('/counter/book')
  const customer = page.getByRole('region', { name: 'Customer' })
  await customer.getByLabel('Name').fill('Corin Halloway')
  await customer.getByLabel('Phone').fill('555-0188')
  await page.getByLabel('Was it here before?').fill('T-0403')
  await page.getByRole('list', { name: 'Heads on record' }).getByRole('button').first().click()
  await page.locator('summary', { hasText: 'More about this head' }).click()
  await page.getByLabel('It comes back because of our earlier work').check()
  await answer(page, {
    words: { 'Cause, as far as known': 'An exhaust seat leaks', 'Who pays': 'the shop' },
  })
  await page.getByLabel(/^Target chamber/).fill('58')
  const number = await pressBook(page)
  await openHead(page, 'T-0403')
  await expect(page.getByRole('heading', { name: `This visit: job ${number}` })).toBeVisible()
  await expect(page.getByRole('region', { name: `Job ${number}`, exact: true })).toContainText(
    'Comeback of job 26-0002: An exhaust seat leaks. Pays: the shop.',
  )
  await expect(page.getByRole('heading', { name: 'Earlier visit: job 26-0002' })).toBeVisible()
  // What was read then is still there to be seen.
  const before = page.getByRole('region', { name: 'Job 26-0002', exact: true })
  await expect(before).toContainText('cc')
  await expect(before).toContainText('Handed over to')
  await expect(before.getByRole('link', { name: 'Spec sheet (PDF)' })).toBeVisible()
  await expect(before.getByRole('link', { name: `job ${number}` })).toBeVisible()
  const trends = page.getByRole('region', { name: 'Over all visits' })
  await expect(trends).toContainText(/0\.\d{4} in at the deepest since/)
  await expect(trends.getByRole('img', { name: 'Chamber volumes over all visits, cc' })).toBeVisible()
})

test('a pulled job goes back as it is, with the reason', async ({ page }) => {
  await signIn(page, 'tamsin')
  const { tag } = prepared('Merrin Lowick')
  await openHead(page, tag)
  await page.getByRole('button', { name: 'Return as is' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('Why it goes back').fill('The customer sold the engine.')
  await dialog.getByRole('button', { name: 'Return it as it is' }).click()
  await expect(page.getByText('returned as is', { exact: true }).first()).toBeVisible()
  const visit = page.getByRole('region', { name: /^Job / }).first()
  await expect(visit).toContainText('The customer sold the engine.')
  await page
    .getByRole('link', { name: /^\d\d-\d{4}$/ })
    .first()
    .click()
  await page.waitForURL(/\/jobs\//)
  await expect(page.getByRole('main')).toContainText('returned as is')
})
