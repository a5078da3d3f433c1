import { expect, test } from '@playwright/test'
import { demoPassword } from '../lib/demo/people'
import { choose, openHead, openStep, signIn, tapAgain } from './person'
import { prepared } from './prepared'
import { settled } from './settled'
import { withoutScripts } from './without-scripts'

/** At the tablet: a slip is put right in one tap, an unlikely figure is kept only when it is really typed again. */
test('6.39 for 63.9 is asked about: one tap puts it right, typing it again keeps it, a double tap does neither', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  await signIn(page, 'dov')
  const { tag } = prepared('Hale Winterbourne')
  await openStep(page, tag, 'Measure chambers')
  const cells = page.getByRole('group', { name: 'Chamber volume', exact: true })
  const type = (chamber: number, text: string) => cells.getByLabel(`chamber ${chamber}`, { exact: true }).fill(text)
  await type(1, '63.8')
  await type(2, '6.39')
  await type(3, '64.0')
  await type(4, '60.0')
  await choose(page, 'Valves in while measuring', 'The shop’s checking valves')
  await choose(page, 'Plug in while measuring', 'The shop’s checking plug')

  const save = page.getByRole('button', { name: 'Save and done' })
  const done = page.getByRole('status').filter({ hasText: 'Done.' })
  await save.click()
  await expect(cells.getByText(/is unlikely: .* cc expected, by .*Type it again to keep it/)).toHaveCount(2)
  // The same button once more confirms nothing.
  await tapAgain(save)
  await tapAgain(save)
  await expect(done).toHaveCount(0)

  await cells.getByRole('button', { name: 'Use 63.9 instead: chamber 2' }).click()
  await expect(cells.getByLabel('chamber 2', { exact: true })).toHaveValue('63.9')
  const again = cells.getByLabel('Again: chamber 4', { exact: true })
  await again.fill('66.0')
  await expect(cells.getByText('Not the figure beside it. Correct one of the two.')).toBeVisible()
  await tapAgain(save)
  await expect(done).toHaveCount(0)
  await again.fill('60.0')
  await tapAgain(save)
  await expect(done).toBeVisible()

  await openHead(page, tag)
  await page.getByRole('region', { name: 'Readings' }).locator('summary', { hasText: 'Measure chambers' }).click()
  const line = (chamber: string) => page.getByRole('row').filter({ hasText: `Chamber volume ${chamber}` })
  await expect(line('chamber 4')).toContainText(/60\.0.*confirmed; .* expected, by the other chambers/)
  await expect(line('chamber 2')).not.toContainText('confirmed')
})

test('nothing is typed before the page listens', async ({ page }) => {
  await signIn(page, 'orla')
  for (const [address, label] of [
    ['/counter/book', 'Casting'],
    ['/back-room/bookkeeper', 'First day'],
    ['/customers/import', 'Table'],
  ] as const) {
    const letGo = await withoutScripts(page)
    await page.goto(address, { waitUntil: 'commit' })
    const field = page.getByLabel(label, { exact: true })
    await expect(field).toBeVisible()
    await expect(field).toBeDisabled()
    letGo()
    await expect(field).toBeEnabled()
    await page.unrouteAll()
  }
})

test('a tag that was scanned into the labels before the page listens is selected', async ({ page }) => {
  const { tag } = prepared('Delphine Marsh')
  await signIn(page, 'tamsin')
  const letGo = await withoutScripts(page)
  await page.goto('/counter/labels', { waitUntil: 'commit' })
  await page.getByLabel('Type or scan a tag').fill(tag)
  letGo()
  await settled(page)
  await page.getByLabel('Type or scan a tag').press('Enter')
  await expect(page.getByRole('checkbox', { name: new RegExp(tag) })).toBeChecked()
  await expect(page.getByLabel('Type or scan a tag')).toHaveValue('')
})

test('a tag of which a part was scanned before the page listens is found whole', async ({ page }) => {
  const { tag } = prepared('Delphine Marsh')
  await signIn(page, 'dov')
  const letGo = await withoutScripts(page)
  await page.goto('/stations/front-desk', { waitUntil: 'commit' })
  await page.getByRole('searchbox').focus()
  await page.keyboard.type(tag.slice(0, 3))
  letGo()
  await settled(page)
  // A focus that came while a part of the page still waited for its script is told once more, as here.
  await page.getByRole('searchbox').dispatchEvent('focusin')
  await page.keyboard.type(tag.slice(3))
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 1, name: 'Check in' })).toBeVisible()
})

test('a name and a password that the browser fills in before the page listens are sent', async ({ page }) => {
  const letGo = await withoutScripts(page)
  await page.goto('/sign-in', { waitUntil: 'commit' })
  await page.getByLabel('Name').fill('tamsin')
  await page.getByLabel('Password').fill(demoPassword)
  // Sent now, the page would come back without what was typed.
  await expect(page.getByRole('button', { name: 'Sign in' })).toBeDisabled()
  await page.getByLabel('Password').press('Enter')
  letGo()
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page).not.toHaveURL(/sign-in/)
})

test('a password stands in no address, even where a browser sends it before the page listens', async ({ browser }) => {
  const page = await browser.newPage({ baseURL: process.env.BRASSTAG_E2E_URL, javaScriptEnabled: false })
  await page.goto('/sign-in')
  await page.getByLabel('Name').fill('tamsin')
  await page.getByLabel('Password').fill('not the right one')
  await page.getByLabel('Password').press('Enter')
  await expect(page.getByLabel('Password')).toHaveValue('not the right one')
  // What sends it all the same, an add-on of the browser for one, asks no button; and is refused.
  await page.evaluate("document.querySelector('form').submit()")
  await expect(page.getByRole('heading', { name: 'This was not sent from a page' })).toBeVisible()
  expect(page.url()).not.toContain('right')
  await page.close()
})
