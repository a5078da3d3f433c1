import { expect, test } from '@playwright/test'
import { openStep, signIn, tapAgain } from './person'
import { prepared } from './prepared'

/** What the benches work to: said on the job, another figure for one head, and read where the work is done. */
test('a wanted figure goes from the job to the bench, and one head may depart from it', async ({ page }) => {
  await signIn(page, 'tamsin')
  const { number, tag } = prepared('Ottoline Frayne')
  await page.goto(`/jobs/${number}`)
  const wanted = page.getByRole('region', { name: 'Wanted figures' })
  await expect(wanted).toContainText('intake 0.0600 in, exhaust 0.0750 in')
  await expect(wanted).toContainText('shop default')

  await wanted.getByRole('button', { name: 'Change the wanted figures' }).click()
  await wanted.getByLabel('Seat width, intake').fill('.055')
  await wanted.getByLabel('Height at coil bind, exhaust').fill('1.900')
  await wanted.getByLabel('Installed height, exhaust').fill('1.800')
  await wanted.getByRole('button', { name: 'Save the wanted figures' }).click()
  await expect(wanted).toContainText('This is not under the installed height.')
  await wanted.getByLabel('Height at coil bind, exhaust').fill('1.100')
  await tapAgain(wanted.getByRole('button', { name: 'Save the wanted figures' }))
  await expect(wanted).toContainText('intake 0.0550 in, exhaust 0.0750 in')
  await expect(wanted).toContainText('intake: for this job, exhaust: shop default')

  await wanted.getByRole('button', { name: 'Change the wanted figures' }).click()
  await wanted.getByText(`${tag} alone`).click()
  await wanted.getByLabel('Seat width, exhaust').fill('.080')
  await wanted.getByRole('button', { name: `Save for ${tag}` }).click()
  await expect(wanted).toContainText('intake: for this job, exhaust: for this head')

  await signIn(page, 'dov')
  await openStep(page, tag, 'Seat work')
  await expect(page.getByText('intake 0.0550 in, exhaust 0.0800 in').first()).toBeVisible()
})
