import { expect, test } from '@playwright/test'
import { signIn } from './person'

/** Papers are printed where they are needed: made with their progress shown, then opened. */

test('a job’s sheets, its labels from the first free place, and the receipt of what was handed over', async ({
  page,
}) => {
  await signIn(page, 'tamsin')
  await page.goto('/jobs/26-0002')
  const papers = page.getByRole('region', { name: 'Papers' })
  const opened = page.context().waitForEvent('page')
  await papers.getByRole('link', { name: 'Job sheet', exact: false }).first().click()
  await opened

  const sheet = page
    .context()
    .waitForEvent('response', (answer) => /tag-labels\/26-0002\?.*first=5/.test(answer.url()))
  await papers.locator('summary', { hasText: 'Labels on a sheet of paper' }).click()
  await papers.getByLabel('First free label on the sheet').fill('5')
  await papers.getByRole('button', { name: 'Print the sheet' }).click()
  const answered = await sheet
  expect(answered.status()).toBe(200)

  const receipt = await papers.getByRole('link', { name: 'Receipt' }).getAttribute('href')
  const paper = await page.request.get(receipt ?? '')
  expect(paper.headers()['content-type']).toBe('application/pdf')
  // Asked for again with what was given: nothing is sent twice.
  const again = await page.request.get(receipt ?? '', {
    headers: { 'if-none-match': paper.headers()['etag'] ?? '' },
  })
  expect(again.status()).toBe(304)

  await signIn(page, 'dov')
  expect((await page.request.get(receipt ?? '')).status()).toBe(403)
  await page.context().clearCookies()
  const stranger = await page.request.get(receipt ?? '', {
    headers: { 'if-none-match': paper.headers()['etag'] ?? '' },
    maxRedirects: 0,
  })
  expect([302, 303, 307, 401]).toContain(stranger.status())
})
