import { expect, test, type Page } from '@playwright/test'
import { bookJob, openHead, signIn } from './person'
import { prepared } from './prepared'

/** The owner makes the steps and stations the shop's own; what is in house follows only when it is told to. */

const line = (page: Page, step: string) =>
  page
    .getByRole('region', { name: 'Route' })
    .first()
    .getByRole('listitem')
    .filter({ has: page.getByRole('link', { name: step, exact: true }) })

const booking = {
  customer: 'Quentin Ashlar',
  phone: '555-0177',
  casting: 'Harrow wedge 64',
  target: '',
  preset: 'Refresh',
  overheated: true,
}

test('a service that is sent out is added, ordered at the counter, and followed by a head in house when asked', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const before = prepared('Perrin Oakhanger')

  await signIn(page, 'orla')
  await page.goto('/back-room/steps')
  await page.getByRole('link', { name: 'Add an outside service' }).click()
  await page.getByLabel('Name').fill('Heat treatment')
  // Only heads that were overheated get it: the shop that the other journeys walk through stays what it is.
  await page.getByLabel('No cut').selectOption('conditional')
  await page.getByLabel('Condition').selectOption('it was overheated')
  await page.getByRole('checkbox', { name: 'What was done' }).check()
  await page.getByLabel(/^Reason/).fill('Two customers asked for it')
  await page.getByRole('button', { name: 'Show what changes' }).click()
  await page.getByRole('button', { name: 'Add this step' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Steps and stations' })).toBeVisible()
  await expect(page.getByRole('link', { name: 'Heat treatment' })).toBeVisible()

  await signIn(page, 'tamsin')
  const after = await bookJob(page, booking)
  await openHead(page, after.tag)
  await expect(line(page, 'Heat treatment')).toContainText('Other benches and vendors')
  await openHead(page, before.tag)
  await expect(line(page, 'Heat treatment')).toHaveCount(0)

  await signIn(page, 'orla')
  await page.goto('/back-room/steps')
  await page.getByRole('link', { name: 'See what the newest would change' }).click()
  const follows = page.getByRole('checkbox', { name: new RegExp(before.tag) })
  await expect(follows).toHaveAccessibleName(/Heat treatment is needed: it was overheated/)
  await follows.check()
  await page.getByRole('button', { name: 'Apply to these heads' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Steps and stations' })).toBeVisible()
  await openHead(page, before.tag)
  await expect(line(page, 'Heat treatment')).toBeVisible()

  // Taken out of use again: it stays where it is, and comes on no new route.
  await page.goto('/back-room/steps')
  await page.getByRole('link', { name: 'Heat treatment' }).click()
  await page.getByRole('checkbox', { name: 'No longer used' }).check()
  await page.getByLabel(/^Reason/).fill('Only for the trial')
  await page.getByRole('button', { name: 'Show what changes' }).click()
  await page.getByRole('button', { name: 'Apply' }).click()
  await expect(page.getByRole('region', { name: 'Steps in working order' })).not.toContainText('Heat treatment')
})

test('a change that would keep a head from its end is refused in words, and what was typed stays', async ({ page }) => {
  await signIn(page, 'orla')
  await page.goto('/back-room/steps/port')
  await page.locator('summary', { hasText: 'What must come first' }).click()
  await page.getByRole('checkbox', { name: 'Flow run after port work', exact: true }).check()
  await page.getByLabel(/^Reason/).fill('A slip of the hand')
  await page.getByRole('button', { name: 'Show what changes' }).click()
  const refused = page.getByRole('alert').filter({ hasText: 'Not done' })
  await expect(refused).toContainText('These steps would wait for each other: port work and flow run after port work.')
  await expect(page.getByLabel(/^Reason/)).toHaveValue('A slip of the hand')
})
