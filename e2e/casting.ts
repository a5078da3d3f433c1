import { expect, type Page } from '@playwright/test'
import { wedgeFigures, type UncutWedge } from '../tests/setup/wedge'
import { choose, signIn } from './person'

/** Types the wedge into the back room as a casting of which the shop has cut none. */
export async function addCasting(page: Page, name: string): Promise<void> {
  await signIn(page, 'orla')
  await page.goto('/back-room/castings/new')
  await page.getByLabel('Name').first().fill(name)
  await page.getByLabel('Material').fill('aluminium')
  await page.getByRole('textbox', { name: /^Chambers/ }).fill('4')
  await choose(page, 'Chamber shape', 'Open')
  for (const [form, figures] of Object.entries(wedgeFigures)) {
    for (const [key, text] of Object.entries(figures)) await page.locator(`[name="figures.${form}.${key}"]`).fill(text)
  }
  await page.getByRole('button', { name: 'Add this casting' }).click()
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
}

/** The page of a casting that the demo was filled with. */
export async function openCasting(page: Page, name: UncutWedge): Promise<void> {
  await signIn(page, 'orla')
  await page.goto('/back-room/castings')
  await page.getByRole('link', { name, exact: true }).click()
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
}
