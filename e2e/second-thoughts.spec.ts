import { expect, test } from '@playwright/test'
import { checkIn } from './answers'
import { bookJob, choose, doStep, openHead, openStep, signIn } from './person'

/** What stops a head on its way, and how it goes on: a hold that the owner decides. */

test('a held head is not ticked: the refusal leads to it, the owner decides, it goes on', async ({
  page,
}) => {
  await signIn(page, 'tamsin')
  const { tag } = await bookJob(page, {
    customer: 'Silas Cawdrey',
    phone: '555-0164',
    casting: 'Harrow wedge 64',
    target: '60',
    preset: 'Cut to size',
  })
  await signIn(page, 'dov')
  await doStep(page, tag, 'Check in', checkIn)
  await openStep(page, tag, 'Strip and wash')
  await page.getByRole('button', { name: 'Hold this head' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel(/^What is wrong/).fill('A rocker stand is broken off')
  await dialog.getByRole('button', { name: 'Put on hold' }).click()
  await expect(dialog).toBeHidden()
  await page.getByRole('button', { name: /^Tick: / }).click()
  const refused = page.getByRole('alert').filter({ hasText: 'Not ticked' })
  await expect(refused).toContainText('A rocker stand is broken off')
  await refused.getByRole('link', { name: 'On hold: A rocker stand is broken off' }).click()
  await page.waitForURL(/\/heads\//)
  await expect(page.getByText('The owner decides how it goes on.')).toBeVisible()

  await signIn(page, 'orla')
  await openHead(page, tag)
  await choose(page, 'How it goes on', 'Rework')
  await page.getByLabel(/^Why/).fill('Weld it up')
  await page.getByRole('button', { name: 'Decide', exact: true }).click()
  await expect(page.getByText('Decided: rework, Weld it up.')).toBeVisible()

  await signIn(page, 'dov')
  await doStep(page, tag, 'Strip and wash')
})
