import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test'
import { demoPassword, demoPeople } from '../lib/demo/people'
import { signInAtForm } from './person'
import { fitsItsWidth, isSound } from './sound'

/** A device of the shop floor, and people at it: enrolled, PIN, idle, the next person, revoked. */

const views = [
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
  { width: 390, height: 844 },
]

const pinOf = (name: string): string => demoPeople.find((one) => one.name === name)?.pin ?? ''

/** The owner makes a code at the desk. */
async function madeCode(owner: Page, name: string): Promise<string> {
  await owner.goto('/back-room/tablets/new')
  await owner.getByLabel('Name').fill(name)
  await owner.getByLabel('Station').selectOption({ label: 'Measuring bench' })
  await owner.getByRole('button', { name: 'Make a code' }).click()
  const code = owner.getByRole('region', { name: `Code for ${name}` })
  await expect(code).toContainText('10 minutes left')
  return (await code.getByRole('status').innerText()).trim()
}

/** A device that typed the owner's code, at the rack. */
async function enrolledTablet(browser: Browser, owner: Page, name: string): Promise<Page> {
  // A code for a tablet asks for a password that was typed lately.
  await signInAtForm(owner, 'orla')
  const code = await madeCode(owner, name)
  const context = await browser.newContext({ viewport: views[0], hasTouch: true })
  const tablet = await context.newPage()
  await tablet.clock.install()
  await tablet.goto('/tablet')
  await tablet.getByLabel('One-time code').fill(code.toLowerCase())
  await tablet.getByRole('button', { name: 'Enrol this tablet' }).click()
  await expect(atRack(tablet)).toBeVisible()
  return tablet
}

const atRack = (tablet: Page) => tablet.getByRole('heading', { level: 1, name: 'Take your time card' })
const keypad = (tablet: Page) => tablet.getByRole('group', { name: 'Keypad' })

async function tapPin(tablet: Page, pin: string): Promise<void> {
  for (const digit of pin) await keypad(tablet).getByRole('button', { name: digit, exact: true }).tap()
}

/** The field has focus once the page answers to taps. */
async function takeCard(tablet: Page, name: string): Promise<void> {
  await tablet.getByRole('link', { name }).tap()
  await expect(tablet.getByLabel('PIN, six digits')).toBeFocused()
}

/** Two taps at the most were needed to get here; then the PIN. */
async function signInByCard(tablet: Page, name: string): Promise<void> {
  await takeCard(tablet, name)
  await tapPin(tablet, pinOf(name))
  await tablet.waitForURL('**/stations/measuring-bench')
}

/** A step that waits at the bench, and a cell of it to type into. */
async function firstStep(tablet: Page): Promise<string> {
  const ready = tablet.getByRole('region', { name: 'Ready' }).getByRole('link')
  return (await ready.first().getAttribute('href')) ?? ''
}

const cellOf = (tablet: Page) => tablet.getByRole('main').locator('input[inputmode="none"]').first()

const deviceCookies = async (context: BrowserContext) =>
  (await context.cookies()).filter(({ name }) => name.includes('tablet'))

test('from the code to the queue, idle, the next person, and what was typed waits', async ({ browser, page }) => {
  const tablet = await enrolledTablet(browser, page, 'Tablet at the bench')
  await signInByCard(tablet, 'Dov Marrick')

  // A machinist's rights and no others; the cookie is not for scripts.
  const [cookie] = await deviceCookies(tablet.context())
  expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Lax', secure: false })
  const step = await firstStep(tablet)
  await tablet.goto(step)
  await cellOf(tablet).fill('4.25')
  await tablet.clock.fastForward('04:50')
  await tablet.getByRole('heading', { level: 1 }).tap()
  await tablet.clock.fastForward('04:50')
  await expect(cellOf(tablet)).toHaveValue('4.25')
  await tablet.clock.fastForward('00:20')
  await expect(atRack(tablet)).toBeVisible()

  // Gone for the next one, on the same step; the real keyboard types a PIN as well.
  await takeCard(tablet, 'Ines Kestrow')
  await tablet.keyboard.type(pinOf('Ines Kestrow'))
  await tablet.waitForURL('**/stations/measuring-bench')
  await tablet.goto(step)
  await expect(cellOf(tablet)).toHaveValue('')
  await cellOf(tablet).fill('4.31')

  // From the step two taps and the PIN: their own first name on the bar, and a card of the rack.
  await expect(cellOf(tablet)).toHaveValue('4.31')
  await tablet.getByRole('button', { name: 'Switch person, Ines Kestrow is here' }).tap()
  await signInByCard(tablet, 'Dov Marrick')
  await tablet.goto(step)
  await expect(cellOf(tablet)).toHaveValue('4.25')
  await tablet.context().close()
})

test('the owner’s PIN opens no back room; a PIN session is nobody’s on another device', async ({ browser, page }) => {
  const tablet = await enrolledTablet(browser, page, 'Tablet for the owner')
  await signInByCard(tablet, 'Orla Quennell')
  await expect(tablet.getByRole('navigation', { name: 'Places' })).not.toContainText('Back room')
  for (const path of ['/back-room', '/back-room/tablets', '/back-room/prices', '/counter/book']) {
    expect([path, (await tablet.goto(path))?.status()]).toEqual([path, 403])
  }
  const elsewhere = await browser.newContext()
  const session = (await tablet.context().cookies()).filter(({ name }) => name.endsWith('brasstag-session'))
  expect(session).toHaveLength(1)
  await elsewhere.addCookies(session)
  const other = await elsewhere.newPage()
  await other.goto('/stations')
  await expect(other).toHaveURL(/sign-in/)
  await expect(other.getByLabel('Password')).toBeVisible()
  await elsewhere.close()
  await tablet.context().close()
})

test('a password opens the back room on a tablet too, and is left alone no longer than a PIN; without a network the page is covered', async ({
  browser,
  page,
}) => {
  const tablet = await enrolledTablet(browser, page, 'Tablet with a password')
  await tablet.getByRole('link', { name: 'Sign in with a password instead' }).click()
  await tablet.getByLabel('Name').fill('orla')
  await tablet.getByLabel('Password').fill(demoPassword)
  await tablet.getByRole('button', { name: 'Sign in', exact: true }).click()
  await expect(tablet).not.toHaveURL(/sign-in/)
  expect((await tablet.goto('/back-room'))?.status()).toBe(200)
  await tablet.waitForLoadState('networkidle')
  await tablet.context().setOffline(true)
  await tablet.clock.fastForward('05:00')
  await expect(tablet.getByRole('dialog', { name: 'Signed out' })).toContainText('No connection')
  const isCovered = await tablet.evaluate(() =>
    [0.05, 0.35, 0.65, 0.95].every((part) =>
      document.elementFromPoint(innerWidth * part, innerHeight * part)?.closest('dialog[open]'),
    ),
  )
  expect(isCovered).toBe(true)
  await tablet.context().setOffline(false)
  await tablet.clock.fastForward('00:05')
  await expect(atRack(tablet)).toBeVisible()
  await tablet.context().close()
})

test('wrong PINs are slowed, for this person alone', async ({ browser, page }) => {
  const tablet = await enrolledTablet(browser, page, 'Tablet of guesses')
  await takeCard(tablet, 'Bram Oldacre')
  for (const time of [1, 2]) {
    await tapPin(tablet, '999998')
    await expect(tablet.getByText('Wrong PIN.'), String(time)).toBeVisible()
  }
  await tapPin(tablet, '999998')
  await expect(tablet.getByText(/^Wait 1\d s before the next try\.$/)).toBeVisible()
  await expect(keypad(tablet).getByRole('button', { name: '5' })).toBeDisabled()
  await tablet.keyboard.type(pinOf('Bram Oldacre'))
  await expect(tablet.getByLabel('PIN, six digits')).toHaveValue('')
  await tablet.getByRole('button', { name: 'Back to the rack' }).click()
  await signInByCard(tablet, 'Ines Kestrow')
  await tablet.context().close()
})

test('revoked in one tap: whoever stands at it is out at the next touch, and the rack is gone', async ({
  browser,
  page,
}) => {
  const tablet = await enrolledTablet(browser, page, 'Tablet to revoke')
  await signInByCard(tablet, 'Dov Marrick')
  await page.goto('/back-room/tablets')
  const row = page.getByRole('row').filter({ hasText: 'Tablet to revoke' })
  await row.getByRole('button', { name: 'Revoke' }).click()
  await expect(row).toContainText('revoked')
  await expect(row.getByRole('button')).toHaveCount(0)
  await tablet.clock.fastForward('00:30')
  await tablet.getByRole('heading', { level: 1 }).tap()
  await expect(tablet.getByRole('heading', { name: 'Sign in to Brasstag' })).toBeVisible()
  await expect(atRack(tablet)).toHaveCount(0)
  await tablet.context().close()
})

test('rack and keypad fit three sizes: nothing sideways, keys 96 by 96 with gaps of 8, axe finds nothing', async ({
  browser,
  page,
}) => {
  const tablet = await enrolledTablet(browser, page, 'Tablet of sizes')
  for (const view of views) {
    await tablet.setViewportSize(view)
    await isSound(tablet, `rack ${view.width}`)
    await takeCard(tablet, 'Dov Marrick')
    await isSound(tablet, `PIN ${view.width}`)
    const boxes = await keypad(tablet)
      .getByRole('button')
      .evaluateAll((keys) => keys.map((key) => key.getBoundingClientRect().toJSON() as DOMRect))
    expect(boxes).toHaveLength(12)
    for (const { width, height, bottom, right } of boxes) {
      expect([width, height]).toEqual([96, 96])
      expect(bottom).toBeLessThanOrEqual(view.height)
      expect(right).toBeLessThanOrEqual(view.width)
    }
    expect((boxes[1]?.left ?? 0) - (boxes[0]?.right ?? 0)).toBe(8)
    expect((boxes[3]?.top ?? 0) - (boxes[0]?.bottom ?? 0)).toBe(8)
    await tablet.getByRole('button', { name: 'Back to the rack' }).click()
  }
  await tablet.setViewportSize({ width: 320, height: 640 })
  await takeCard(tablet, 'Dov Marrick')
  await fitsItsWidth(tablet, 'PIN at 320')
  await tablet.context().close()
})

test('the keypad is one tab stop, and arrows move in it', async ({ browser, page }) => {
  const tablet = await enrolledTablet(browser, page, 'Tablet with keys')
  await takeCard(tablet, 'Dov Marrick')
  await tablet.keyboard.press('Tab')
  const key = (name: string) => keypad(tablet).getByRole('button', { name, exact: true })
  await expect(key('5')).toBeFocused()
  for (const [arrow, name] of [
    ['ArrowRight', '6'],
    ['ArrowUp', '9'],
    ['ArrowUp', '9'],
    ['ArrowDown', '6'],
    ['ArrowLeft', '5'],
  ] as const) {
    await tablet.keyboard.press(arrow)
    await expect(key(name), arrow).toBeFocused()
  }
  await tablet.keyboard.press('Enter')
  await expect(tablet.getByLabel('PIN, six digits')).toHaveValue('5')
  await tablet.keyboard.press('Tab')
  await expect(keypad(tablet).locator(':focus')).toHaveCount(0)
  await tablet.context().close()
})
