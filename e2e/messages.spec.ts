import { expect, test, type Page } from '@playwright/test'
import { isSound } from './sound'
import { signIn, tapAgain } from './person'
import { prepared } from './prepared'

/** The demo has no mail server: a text is seen, changed, sent by one's own means, and put on record. */

const part = (page: Page) => page.getByRole('region', { name: 'Messages', exact: true })

test('a text to the customer: what cannot be said yet, a changed text with a link that opens, on record', async ({
  page,
  browser,
}) => {
  await signIn(page, 'tamsin')
  const { number, tag } = prepared('Wystan Fenn')
  await page.goto(`/jobs/${number}`)
  await expect(part(page).getByText('Nothing was written to the customer yet.')).toBeVisible()
  await tapAgain(part(page).getByRole('button', { name: 'Write to the customer' }))
  await part(page).getByLabel('Which text').selectOption({ label: 'Ready for pickup' })
  await expect(part(page).getByText('No head of this job is ready to pick up.')).toBeVisible()
  await part(page).getByLabel('Which text').selectOption({ label: 'Job booked' })
  const body = part(page).getByRole('textbox', { name: 'Text' })
  await expect(body).toHaveValue(new RegExp(`We have booked your job ${number}: ${tag}\\.`))
  await body.fill('Grüße & bis bald,\n{link}')
  await isSound(page, 'the text to be written')
  await part(page).getByRole('button', { name: 'Make the text' }).click()

  const sms = part(page).getByRole('link', { name: 'Open as a text message' })
  const href = new URL((await sms.getAttribute('href')) ?? '')
  expect(href.pathname).toBe('5550173')
  const [hello, link = ''] = (href.searchParams.get('body') ?? '').split('\n')
  expect(hello).toBe('Grüße & bis bald,')
  const customer = await (await browser.newContext()).newPage()
  await customer.goto(new URL(link).pathname)
  await expect(customer.getByText(tag).first()).toBeVisible()
  await customer.context().close()

  await expect(part(page).getByRole('button', { name: 'Sent', exact: true })).toBeHidden()
  await part(page).getByRole('button', { name: 'Copy the text' }).click()
  await part(page).getByRole('button', { name: 'Sent', exact: true }).click()
  await expect(part(page).getByText('Job booked, pasted by hand')).toBeVisible()
  await part(page).getByText('Text', { exact: true }).click()
  await expect(part(page).getByText('(the customer’s link)')).toBeVisible()
  await page.setViewportSize({ width: 390, height: 844 })
  await isSound(page, 'the messages of a job on a phone')
})
