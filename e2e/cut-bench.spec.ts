import { expect, test } from '@playwright/test'
import { signIn, signInAtForm } from './person'

/**
 * Opening area 10.1706 in² is 6.0 thou per cc, its centre at 0.635 of a width of 6 in [common practice]: 64 to 61 cc is
 * 3·6 = 18 thou flat; half a thou of angle part at the edge takes 0.3175 thou of it at the chamber's centre.
 */
const typed = 'now=64&to=61&used=0&openingAreaIn2=10.1706&openingCentreIn=3.810&milledWidthIn=6'

test('the counter asks, slides, keeps an estimate and books from it', async ({ page }) => {
  await signInAtForm(page, 'tamsin')
  await page.goto(`/cut-bench?${typed}`)
  const answer = page.getByRole('region', { name: 'Answer' }).getByRole('status')
  await expect(answer).toHaveText('Yes. Flat cut, 18 thou.')

  const slider = page.getByRole('slider', { name: 'Between flat and tilt' })
  await slider.focus()
  await page.keyboard.press('ArrowRight')
  await expect(slider).toHaveAttribute('aria-valuetext', '17.7 thou flat and 0.5 thou at the exhaust edge')
  await expect(
    page.getByRole('heading', { name: 'Angle cut, 0.5 thou at the exhaust edge, then 17.7 thou flat' }),
  ).toBeVisible()

  // What is not known leads to the field that gives it.
  await page.getByRole('region', { name: 'Engine' }).getByRole('button', { name: 'bore', exact: true }).click()
  await expect(page.getByLabel('Bore, in', { exact: true })).toBeFocused()
  await page.keyboard.type('wide')
  await expect(page.getByText('wide', { exact: false }).last()).toBeVisible()
  await page.keyboard.press('Control+A')
  await page.keyboard.type('4.03')

  // The address is the question: somebody else who works here sees the same answer.
  await expect(page).toHaveURL(/boreIn=4\.03/)
  const shared = page.url()

  await page.getByRole('button', { name: 'Save as estimate' }).click()
  await page.getByRole('textbox', { name: 'Customer' }).fill('Maren Holt')
  await page.getByRole('button', { name: 'Save answer', exact: true }).click()
  await page.waitForURL(/\/cut-bench\/kept\//)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('for Maren Holt')
  const print = await page.getByRole('link', { name: 'Print it' }).getAttribute('href')
  const paper = await page.request.get(print ?? '')
  expect(paper.headers()['content-type']).toBe('application/pdf')

  await page.getByRole('link', { name: 'Book a job from it' }).click()
  await expect(page.getByLabel(/^Target chamber/)).toHaveValue('61')
  await expect(page.getByText('Ordered:').locator('..')).toContainText('Angle cut')
  await page.locator('summary', { hasText: /^Engine/ }).click()
  await expect(page.getByLabel('Bore', { exact: true })).toHaveValue('4.03')

  await signIn(page, 'dov')
  await page.goto(shared)
  await expect(page.getByRole('region', { name: 'Answer' }).getByRole('status')).toHaveText('Yes. Flat cut, 18 thou.')
  await expect(page.getByText('a head', { exact: false }).filter({ hasText: '$' })).toHaveCount(0)
  await expect(page.getByRole('link', { name: 'Book a job from it' })).toHaveCount(0)
})

test('what cannot be is said with its reason, and what is above the chamber is opened', async ({ page }) => {
  await signIn(page, 'tamsin')
  await page.goto(`/cut-bench?${typed}&flat=1&deepest=0.010`)
  await expect(page.getByRole('region', { name: 'Answer' }).getByRole('status')).toHaveText(
    'Not possible as asked: every option is ruled out.',
  )
  await expect(page.getByText('The class allows 10 thou at the deepest').first()).toBeVisible()
  await page.goto(`/cut-bench?${typed.replace('to=61', 'to=66')}`)
  await expect(page.getByRole('region', { name: 'Answer' }).getByRole('status')).toHaveText(
    'Yes. Open the chambers by 2.0 cc.',
  )
})

test('the bench stands inside the booking', async ({ page }) => {
  await signIn(page, 'tamsin')
  await page.goto('/counter/book')
  await page.getByLabel('Casting', { exact: true }).selectOption({ label: 'Harrow wedge 64, nominal 64.0 cc' })
  await page.getByLabel(/^Target chamber/).fill('58')
  await page.locator('summary', { hasText: 'Cut bench' }).click()
  await page
    .getByRole('radio', { name: /^Angle cut/ })
    .first()
    .check()
  await page.getByRole('button', { name: 'Order this way' }).click()
  await expect(page.getByText('Ordered:').locator('..')).toContainText('Angle cut, Flat cut')
})
