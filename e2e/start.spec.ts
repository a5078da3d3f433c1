import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { startServer } from './server'

test('the server says that it is well, and nothing else', async ({ request }) => {
  const answer = await request.get('/api/health')
  expect(answer.status()).toBe(200)
  expect(await answer.text()).toBe('{"status":"ok"}')
})

test('whoever is not signed in comes to the sign-in page', async ({ page }) => {
  await page.goto('/counter')
  await expect(page).toHaveURL(/\/sign-in/)
  await expect(page.getByLabel('Password')).toBeVisible()
})

test('a real shop starts twice, keeps its folder, and is not started as a demo', async ({ page }) => {
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
    await second.stop()

    await expect(startServer('demo', folder)).rejects.toThrow('holds a real shop: start it with npm run shop')
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
