import { createHmac } from 'node:crypto'
import { expect, test, type Page } from '@playwright/test'
import { demoPassword } from '../lib/demo/people'
import { signInAtForm, tapAgain } from './person'
import { isSound } from './sound'

/** Who is in: a wrong password, a link to choose one, one's own password, a second factor. */

async function fillIn(page: Page, password: string): Promise<void> {
  await page.getByLabel('Name').fill('ines')
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
}

/** What an authenticator app makes of the key that is shown, by RFC 6238. */
function codeNow(key: string): string {
  const values = [...key].map((sign) => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'.indexOf(sign).toString(2).padStart(5, '0'))
  const bytes = (values.join('').match(/.{8}/g) ?? []).map((byte) => parseInt(byte, 2))
  const counter = Buffer.alloc(8)
  counter.writeUInt32BE(Math.floor(Date.now() / 30_000), 4)
  const mac = createHmac('sha1', Buffer.from(bytes)).update(counter).digest()
  const number = mac.readUInt32BE((mac.at(-1) ?? 0) % 16) % 2 ** 31
  return String(number % 1_000_000).padStart(6, '0')
}

test('a wrong password, a link to choose one, one’s own, and a second factor', async ({ browser, page }) => {
  await page.goto('/sign-in')
  await fillIn(page, 'a guess at it')
  await expect(page.getByText('Wrong name or password.')).toBeVisible()

  const owner = await (await browser.newContext()).newPage()
  await signInAtForm(owner, 'orla')
  await owner.goto('/back-room/people')
  await owner.getByRole('link', { name: 'Ines Kestrow' }).click()
  await owner.getByRole('button', { name: 'Make a link to choose a password' }).click()
  const link = await owner.getByText(/\/reset\/[\w-]{32}/).innerText()
  await owner.context().close()

  await page.goto(link)
  await page.getByLabel(/^New password(?! again)/).fill('letmein2026')
  await page.getByLabel('New password again').fill('letmein2026')
  await page.getByRole('button', { name: 'Save password' }).click()
  await expect(page.getByText('among the first that anyone would try').first()).toBeVisible()
  await isSound(page, 'the link to choose a password')
  await page.getByLabel(/^New password(?! again)/).fill('a plum deck and a square hole')
  await page.getByLabel('New password again').fill('a plum deck and a square hole')
  await page.getByRole('button', { name: 'Save password' }).click()
  await expect(page.getByText('Your new password is saved')).toBeVisible()
  await fillIn(page, 'a plum deck and a square hole')
  await expect(page).not.toHaveURL(/sign-in/)

  await page.goto('/account')
  await page.getByLabel('Your password now').fill('a plum deck and a square hole')
  await page.getByLabel(/^New password(?! again)/).fill(demoPassword)
  await page.getByLabel('New password again').fill(demoPassword)
  await page.getByRole('button', { name: 'Change password' }).click()
  await expect(page.getByText('Your new password is saved')).toBeVisible()
  await fillIn(page, demoPassword)
  await expect(page).not.toHaveURL(/sign-in/)

  await page.goto('/account')
  await page.getByRole('button', { name: 'Set up a second factor' }).click()
  const key = (await page.getByText(/^([A-Z2-7]{4} ){7}[A-Z2-7]{4}$/).innerText()).replaceAll(' ', '')
  await isSound(page, 'the second factor')
  await page.getByLabel(/^Code/).fill(codeNow(key))
  await page.getByRole('button', { name: 'Use this app' }).click()
  const listed = page.getByRole('listitem').filter({ hasText: /^([a-z2-9]{4}-){5}[a-z2-9]{4}$/ })
  await expect(listed).toHaveCount(10)
  const [recovery = ''] = await listed.allInnerTexts()
  await page.getByRole('button', { name: 'I have kept them' }).click()
  await page.getByRole('button', { name: 'Sign out' }).click()

  await fillIn(page, demoPassword)
  await page.getByLabel(/^Code/).fill('000000')
  await tapAgain(page.getByRole('button', { name: 'Sign in' }))
  await expect(page.getByText('This code is wrong')).toBeVisible()
  await page.getByLabel(/^Code/).fill(recovery)
  await tapAgain(page.getByRole('button', { name: 'Sign in' }))
  await expect(page).not.toHaveURL(/sign-in/)

  // As it was, for whoever comes after.
  await page.goto('/account')
  await page.getByRole('button', { name: 'Give up the second factor' }).click()
  await expect(page.getByText('Your sign-in asks for your password alone.')).toBeVisible()
})
