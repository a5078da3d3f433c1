import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test, type Page } from '@playwright/test'
import sharp from 'sharp'
import { demoPassword } from '../lib/demo/people'
import { startServer } from './server'
import { isSound } from './sound'

test('the server says that it is well, and nothing else', async ({ request }) => {
  const answer = await request.get('/api/health')
  expect(answer.status()).toBe(200)
  expect(await answer.text()).toBe('{"status":"ok"}')
})

test('whoever is not signed in comes to the sign-in page, and from there to the page asked for', async ({ page }) => {
  await page.goto('/stations')
  await expect(page).toHaveURL(/\/sign-in/)
  await page.getByLabel('Name').fill('bram')
  await page.getByLabel('Password').fill(demoPassword)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page).toHaveURL(/\/stations$/)
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
})

const password = 'the first one through the door'

/** The first visit of a real shop, and its owner signed in. */
async function setUp(page: Page, url: string, code: string): Promise<void> {
  await page.goto(`${url}/setup`)
  await page.getByLabel('One-time code').fill(code)
  const shop = page.getByRole('region', { name: 'The shop' })
  await shop.getByLabel('Name').fill('Thornback Heads')
  await shop.getByLabel('Time zone').selectOption('America/Chicago')
  await shop.getByLabel('Currency').selectOption('USD')
  await shop.getByLabel('Dates and numbers').selectOption('en-US')
  const owner = page.getByRole('region', { name: 'The owner' })
  await owner.getByRole('textbox', { name: /^Name/ }).fill('Maud Ellery')
  await owner.getByLabel('Sign-in name').fill('maud')
  await owner.getByLabel('Password', { exact: false }).first().fill(password)
  await owner.getByLabel('Password again').fill(password)
  await page.getByRole('button', { name: 'Set up this shop' }).click()
  await expect(page).toHaveURL(/sign-in/)
  await page.getByLabel('Name').fill('maud')
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page).not.toHaveURL(/sign-in/)
}

/** A drawing is refused in words, a picture is looked at before it is used, shown as it prints, and taken away. */
async function chooseAndTakeAwayLogo(page: Page): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto(new URL('/back-room/shop', page.url()).href)
  const logo = page.getByRole('region', { name: 'Logo' })
  await expect(logo.getByText('No logo: papers show the name only.')).toBeVisible()
  const drawing = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30"/>')
  await logo.getByLabel('Choose a picture').setInputFiles({ name: 'logo.png', mimeType: 'image/png', buffer: drawing })
  await logo.getByRole('button', { name: 'Use this picture' }).click()
  await expect(logo.getByText(/Choose a PNG, JPEG or WebP picture/)).toBeVisible()

  const picture = await sharp({ create: { width: 600, height: 300, channels: 3, background: '#204050' } })
    .png()
    .toBuffer()
  const file = { name: 'logo.png', mimeType: 'image/png', buffer: picture }
  await logo.getByLabel('Choose a picture').setInputFiles(file)
  await expect(logo.getByText('Chosen, not in use yet', { exact: true })).toBeVisible()
  await logo.getByRole('button', { name: 'Use this picture' }).click()
  await expect(logo.getByText('Saved. Papers show this logo from now on.')).toBeVisible()
  const shown = logo.getByText('As it prints').locator('xpath=..').locator('img')
  // Decoded, not only there: 600 × 300 within 945 × 307 stays as it is.
  await expect.poll(() => shown.evaluate((node: HTMLImageElement) => node.naturalWidth)).toBe(600)
  await logo.getByLabel('Replace the logo').setInputFiles(file)
  await isSound(page)
  await logo.getByRole('button', { name: 'Keep the old logo' }).click()
  const address = (await shown.getAttribute('src')) ?? ''
  const served = await page.request.get(new URL(address, page.url()).href)
  expect(served.headers()).toMatchObject({
    'content-type': 'image/png',
    'x-content-type-options': 'nosniff',
    'cache-control': 'no-store',
    'content-security-policy': "default-src 'none'; sandbox",
    'content-disposition': 'inline; filename="logo.png"',
  })
  await logo.getByRole('button', { name: 'Remove the logo' }).click()
  await expect(logo.getByText('Logo removed. Papers show the name only.')).toBeVisible()
  await expect(logo.getByRole('button', { name: 'Remove the logo' })).toHaveCount(0)
  expect((await page.request.get(new URL(address, page.url()).href)).status()).toBe(404)
}

test('a real shop starts twice, keeps its folder, gets an owner and a logo, and is not started as a demo', async ({
  page,
}) => {
  test.setTimeout(240_000)
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-shop-'))
  const secretFile = join(folder, 'session-secret')
  try {
    const first = await startServer('shop', folder)
    expect(first.printed()).toMatch(/enter this code: ([A-Z2-9]{4}-){2}[A-Z2-9]{4}/)
    expect(first.printed()).not.toContain('password')
    const secret = readFileSync(secretFile, 'utf8')
    expect(statSync(secretFile).mode & 0o777).toBe(0o600)
    await expect(startServer('demo', folder)).rejects.toThrow('in use by another Brasstag process')
    await first.stop()

    const second = await startServer('shop', folder)
    expect(readFileSync(secretFile, 'utf8')).toBe(secret)
    await page.goto(second.url)
    await expect(page).toHaveURL(new RegExp(`^${second.url}/`))
    const code = /([A-Z2-9]{4}-){2}[A-Z2-9]{4}/.exec(second.printed())?.[0] ?? ''
    await setUp(page, second.url, code)
    await chooseAndTakeAwayLogo(page)
    await second.stop()

    await expect(startServer('demo', folder)).rejects.toThrow('holds a real shop: start it with npm run shop')
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
