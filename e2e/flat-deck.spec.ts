import { expect, test } from '@playwright/test'
import { choose, openHead, pressBook, signIn } from './person'

const casting = 'Marrow flat deck 4'

test('a flat-deck head is asked about, booked to a thickness, and its plan says what its valves become', async ({
  page,
}) => {
  await signIn(page, 'tamsin')
  // New 4.1340, 6 thou gone: 4.1280 now, 8 thou to 4.1200. Intake valves 36 less 8 are 28, injectors 61 and 8 are 69.
  await page.goto('/cut-bench')
  await page.getByLabel('Casting', { exact: true }).selectOption({ label: casting })
  await page.getByLabel('Thickness wanted, in').fill('4.1200')
  await expect(page.getByLabel('Target, cc')).toHaveCount(0)
  await page.getByLabel('Removed since new, as far as known').fill('.006')
  await page.getByLabel('Intake valves below the deck now, in').fill('.036')
  await page.getByLabel('Injector protrusion now, in').fill('.061')
  await expect(page.getByRole('region', { name: 'Answer' }).getByRole('status')).toHaveText(
    'Yes. Flat cut to 4.1200 in thick, 8 thou.',
  )
  const valves = page.getByRole('region', { name: /^Valves and injectors/ })
  await expect(valves).toContainText('0.0280 in, was 0.0360')
  await expect(valves).toContainText('0.0690 in, was 0.0610')

  await page.goto('/counter/book')
  const customer = page.getByRole('region', { name: 'Customer' })
  await customer.getByLabel('Name').fill('Odessa Fairweather')
  await customer.getByLabel('Phone').fill('555-0188')
  await page.getByLabel('Casting', { exact: true }).selectOption({ label: casting })
  await expect(page.getByLabel('Target chamber')).toHaveCount(0)
  await choose(page, 'Flat-deck heads are cut', 'To a thickness')
  await page.getByLabel(/^Finished thickness/).fill('4.1200')
  await pressBook(page)
  await expect(page.getByRole('main')).toContainText('cut: 4.1200 in thick')

  // The demo's own head of this casting was planned and cut: its page says to what.
  await page.goto('/find?q=Fenwick')
  const tag = /T-\d{4,}/.exec(await page.getByRole('main').innerText())?.[0] ?? ''
  await openHead(page, tag)
  await expect(page.getByRole('main')).toContainText('Flat cut to 4.1200 in thick')
})
