import { expect, test } from '@playwright/test'
import { signIn } from './person'

/** Papers are printed where they are needed: made with their progress shown, then opened. */

test('a job’s sheets, its labels from the first free place, and the slip of what was handed over', async ({ page }) => {
  await signIn(page, 'tamsin')
  await page.goto('/jobs/26-0002')
  const papers = page.getByRole('region', { name: 'Papers' })
  const jobSheet = papers.getByRole('link', { name: 'Job sheet', exact: false }).first()
  await page.route('**/api/papers/job-sheet/**', (route) => route.abort())
  await jobSheet.click()
  await expect(papers.getByRole('status').filter({ hasText: 'does not answer' })).toBeVisible()
  await page.unroute('**/api/papers/job-sheet/**')
  // A slow machine: over half a second, and its progress is shown until the paper opens.
  await page.route('**/api/papers/job-sheet/**', async (route) => {
    await expect(papers.getByRole('progressbar', { name: 'Making 2 pages…' })).toBeVisible()
    await route.continue()
  })
  const opened = page.context().waitForEvent('page')
  await jobSheet.click()
  await opened
  await expect(papers.getByRole('progressbar')).toHaveCount(0)

  const sheet = page.context().waitForEvent('response', (answer) => /tag-labels\/26-0002\?.*first=5/.test(answer.url()))
  await papers.locator('summary', { hasText: 'Labels on a sheet of paper' }).click()
  await papers.getByLabel('First free label on the sheet').fill('5')
  await papers.getByRole('button', { name: 'Print the sheet' }).click()
  const answered = await sheet
  expect(answered.status()).toBe(200)

  const slip = await papers.getByRole('link', { name: 'Hand-over slip' }).getAttribute('href')
  const paper = await page.request.get(slip ?? '')
  expect(paper.headers()['content-type']).toBe('application/pdf')
  // The browser may keep it, and asks again: with what was given, nothing is sent twice.
  expect(paper.headers()['cache-control']).toBe('private, no-cache')
  const again = await page.request.get(slip ?? '', {
    headers: { 'if-none-match': paper.headers()['etag'] ?? '' },
  })
  expect(again.status()).toBe(304)

  await signIn(page, 'dov')
  expect((await page.request.get(slip ?? '')).status()).toBe(403)
  await page.context().clearCookies()
  const stranger = await page.request.get(slip ?? '', {
    headers: { 'if-none-match': paper.headers()['etag'] ?? '' },
    maxRedirects: 0,
  })
  expect([302, 303, 307, 401]).toContain(stranger.status())
})

test('labels for heads of several jobs: picked from the list, scanned, and printed on one sheet', async ({ page }) => {
  await signIn(page, 'tamsin')
  await page.goto('/counter')
  await page.getByRole('link', { name: 'Tag labels' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Tag labels' })).toBeVisible()
  await page.getByRole('button', { name: 'Print the sheet' }).click()
  await expect(page.getByText('Pick the heads to print labels for.')).toBeVisible()

  const boxes = page.getByRole('group', { name: 'Heads' }).getByRole('checkbox')
  const tags = await boxes.evaluateAll((all) => all.map((box) => (box as HTMLInputElement).value))
  const [first = '', , third = ''] = tags
  await boxes.first().check()
  const scan = page.getByLabel('Type or scan a tag')
  // As a scanner reads it off the plate: the address behind the code, and Enter.
  await scan.fill(`http://127.0.0.1:3000/t/${third}`)
  await scan.press('Enter')
  await expect(page.getByRole('status').filter({ hasText: '2 selected' })).toBeVisible()
  await scan.fill('T-9998')
  await scan.press('Enter')
  await expect(page.getByText('Tag not found: T-9998.')).toBeVisible()
  await expect(page.getByRole('status').filter({ hasText: '2 selected' })).toBeVisible()

  const asked = page.context().waitForEvent('response', (answer) => answer.url().includes('/api/papers/tag-labels?'))
  await page.getByLabel('First free label on the sheet').fill('26')
  await page.getByRole('button', { name: 'Print the sheet' }).click()
  const answered = await asked
  expect(answered.status()).toBe(200)
  const query = new URL(answered.url()).searchParams
  expect([query.getAll('tag').toSorted(), query.get('first')]).toEqual([[first, third].toSorted(), '26'])
  const unknown = await page.request.get('/api/papers/tag-labels?first=1&tag=T-9999')
  expect([unknown.status(), await unknown.text()]).toEqual([404, expect.stringContaining('T-9999')])
})
