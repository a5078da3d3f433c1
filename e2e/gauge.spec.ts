import { expect, test, type Page } from '@playwright/test'
import { choose, openStep, signIn } from './person'
import { prepared } from './prepared'

/** What types by itself at a bench: a digital gauge, a foot switch, a scanner of tags. */

test.use({ viewport: { width: 1024, height: 768 } })

/** As a gauge on a USB or Bluetooth keyboard sends it: the characters at once, then Enter, into whatever has the focus. */
async function gaugeTypes(page: Page, figure: string): Promise<void> {
  await page.keyboard.type(figure)
  await page.keyboard.press('Enter')
}

test('a gauge fills the cells one after the other, a foot switch goes on over an empty one, and both end at the button', async ({
  page,
}) => {
  await signIn(page, 'dov')
  const { tag } = prepared('Sabine Orchard')
  await openStep(page, tag, 'Measure chambers')
  const cells = page.getByRole('group', { name: 'Chamber volume', exact: true })
  const cell = (chamber: number) => cells.getByLabel(`chamber ${chamber}`, { exact: true })
  const button = page.getByRole('button', { name: 'Save and done' })

  await cell(1).focus()
  await gaugeTypes(page, '63.8')
  await expect(cell(1)).toHaveValue('63.8')
  await expect(cell(2)).toBeFocused()
  // With its unit; the cell shows it once.
  await gaugeTypes(page, '63.9 cc')
  await expect(cell(3)).toBeFocused()
  // The foot switch sends Enter alone, as the key "Next" does.
  await page.keyboard.press('Enter')
  await expect(cell(4)).toBeFocused()
  await expect(cell(3)).toHaveValue('')
  await gaugeTypes(page, '64.0')
  await expect(button).toBeFocused()

  // What a gauge sends is questioned like what a hand types.
  await cell(3).focus()
  await gaugeTypes(page, '6.39')
  await expect(cells.getByText(/is unlikely: .* cc expected, by .*Type it again to keep it/)).toBeVisible()
  await expect(cells.getByLabel('Again: chamber 3', { exact: true })).toBeFocused()
  await choose(page, 'Valves in while measuring', 'The shop’s checking valves')
  await choose(page, 'Plug in while measuring', 'The shop’s checking plug')
  await button.press('Enter')
  await expect(page.getByText('One figure needs a look.', { exact: false })).toBeVisible()
  await cell(3).fill('')
  await cell(3).focus()
  await gaugeTypes(page, '63.9')
  await expect(button).toBeFocused()
  // A button takes no second press within 400 ms: no foot is as fast as this test.
  await page.waitForTimeout(450)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('status').filter({ hasText: 'Done.' })).toBeVisible()
})

test('a gauge that reads inches fills a cell that shows thou, and the figure is the same', async ({ page }) => {
  await signIn(page, 'dov')
  const { tag } = prepared('Corbin Ashdown')
  await openStep(page, tag, 'Measure thickness')
  const flat = page.getByRole('group', { name: 'Straightness', exact: true })
  await flat.getByLabel('across', { exact: true }).focus()
  await page.getByRole('button', { name: /^unit: inches; change to thousandths of an inch$/ }).click()
  await gaugeTypes(page, '0.0015in')
  // Fifteen ten-thousandths of an inch are one and a half thou.
  await expect(flat.getByText('0.0015 in').first()).toBeVisible()
  await expect(flat.getByLabel('along', { exact: true })).toBeFocused()
})

test('a scanned tag opens its step at the station of this device; without one, the head', async ({ page }) => {
  const { tag } = prepared('Delphine Marsh')
  await signIn(page, 'dov')
  await page.goto(`/t/${tag}`)
  await expect(page).toHaveURL(/\/heads\/[^/]+$/)
  await expect(page.getByRole('region', { name: 'Route' })).toBeVisible()

  // The station last chosen here counts; a scanner types into the box and presses Enter.
  await page.goto('/stations/front-desk')
  await expect(page.getByRole('heading', { level: 1, name: 'Front desk' })).toBeVisible()
  await page.getByRole('searchbox').focus()
  await gaugeTypes(page, tag)
  await expect(page.getByRole('heading', { level: 1, name: 'Check in' })).toBeVisible()
  expect(page.url()).toContain('/stations/front-desk/heads/')
  await page.goto(`/t/${tag}`)
  await expect(page.getByRole('heading', { level: 1, name: 'Check in' })).toBeVisible()

  // Nothing of it is open at the port bench.
  await page.goto('/stations/port-bench')
  await page.getByRole('searchbox').focus()
  await gaugeTypes(page, `https://heads.example/t/${tag}`)
  await expect(page.getByRole('region', { name: 'Route' })).toBeVisible()
  // Away from the stations the box finds the head, as ever.
  await page.getByRole('searchbox').focus()
  await gaugeTypes(page, tag)
  await expect(page.getByRole('region', { name: 'Route' })).toBeVisible()
})

test('a stop is felt, nothing typed is said, and the words of a finding outlive a reload', async ({ page }) => {
  await page.addInitScript(() => {
    const felt: unknown[] = []
    Object.assign(window, { felt })
    navigator.vibrate = (pattern) => felt.push(pattern) > 0
  })
  const felt = () => page.evaluate(() => (window as unknown as { felt: unknown[] }).felt.length)
  await signIn(page, 'dov')
  const { tag } = prepared('Lowell Wexcombe')
  await openStep(page, tag, 'Measure thickness')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('status').filter({ hasText: 'Nothing typed yet.' })).toBeVisible()
  expect(await felt()).toBe(0)

  // No head is nine inches out of straight: felt once it is left, not while it is typed.
  const across = page.getByRole('group', { name: 'Straightness', exact: true }).getByLabel('across', { exact: true })
  await across.focus()
  await page.keyboard.type('9')
  expect(await felt()).toBe(0)
  await page.keyboard.press('Enter')
  await expect.poll(felt).toBeGreaterThan(0)

  await page.getByRole('button', { name: 'Finding', exact: true }).click()
  const dialog = page.getByRole('dialog')
  const what = dialog.getByLabel(/^What was found/)
  await what.fill('Guide 5 is loose')
  await page.reload()
  await page.getByRole('button', { name: 'Finding', exact: true }).click()
  await expect(what).toHaveValue('Guide 5 is loose')
  await dialog.getByRole('button', { name: 'Report it' }).click()
  await expect(dialog).toBeHidden()
  await expect(page.getByText('Finding reported: Guide 5 is loose. Not answered yet.')).toBeVisible()
  await expect(page.getByRole('banner').or(page.locator('header')).getByText('finding open')).toBeVisible()
})
