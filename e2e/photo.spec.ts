import { expect, test, type Locator } from '@playwright/test'
import sharp from 'sharp'
import { answer, openHead, openStep, signIn } from './person'
import { prepared } from './prepared'
import { isSound } from './sound'

/**
 * A photo from the tablet to the customer's phone: taken at check-in, sent again after the network failed, put to a
 * finding, seen by the counter and on the link, withdrawn.
 */

// The tablet of a station.
test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true })

/** A picture as a camera makes it, larger than is kept, with who made it written into it. */
const camera = async (colour: string) => ({
  name: 'IMG_0001.jpg',
  mimeType: 'image/jpeg',
  buffer: await sharp({ create: { width: 2400, height: 1800, channels: 3, background: colour } })
    .withExif({ IFD0: { Make: 'Fernglas' } })
    .jpeg()
    .toBuffer(),
})

/** Loaded and decoded, not only there. */
const isDrawn = (image: Locator): Promise<void> =>
  expect
    .poll(() => image.evaluate((node) => (node instanceof HTMLImageElement ? node.naturalWidth : 0)))
    .toBeGreaterThan(0)

test('a photo at check-in, and one of a finding that the customer sees', async ({ page, browser }) => {
  test.setTimeout(240_000)
  const { tag } = prepared('Ottoline Drax')
  await signIn(page, 'dov')
  await openStep(page, tag, 'Check in')
  await answer(page, {
    choices: { Condition: 'No damage seen' },
    words: { 'What came with it': 'Bare' },
  })
  const tick = page.getByRole('button', { name: 'Save and done' })
  await tick.tap()
  await expect(page.getByText('Check in: no photo yet.')).toBeVisible()

  const field = page.getByRole('group', { name: 'Photo', exact: true })
  await field.getByLabel('Take a photo').setInputFiles(await camera('#7f8a91'))
  await expect(field.getByRole('img', { name: 'The photo just taken' })).toBeVisible()
  await field.getByLabel('What it shows').fill('As it came in')
  await isSound(page)

  // The network fails: the photo and the tick are kept here, in that order. It comes back: both go, the photo once.
  await page.route('**/api/photos', (route) => route.abort())
  await tick.tap()
  await expect(page.getByText('Kept here, not yet sent: 2')).toBeVisible()
  await expect(page.getByRole('status').filter({ hasText: 'Done.' })).toBeVisible()
  await isSound(page)
  await page.unroute('**/api/photos')
  await expect(page.getByText(/Kept here, not yet sent/)).toHaveCount(0, { timeout: 20_000 })
  await expect(page.getByRole('status').filter({ hasText: 'Done.' })).toBeVisible()
  const here = page.getByRole('region', { name: 'Photos' })
  await expect(here.getByRole('img')).toHaveCount(1)
  await isDrawn(here.getByRole('img'))
  await expect(here.getByText('As it came in')).toBeVisible()

  // What is served is no larger than is kept, and says nothing of the camera.
  const address = (await here.getByRole('img').getAttribute('src'))?.replace('?size=small', '') ?? ''
  const served = await page.request.get(address)
  expect(served.headers()).toMatchObject({
    'content-type': 'image/jpeg',
    'x-content-type-options': 'nosniff',
    'cache-control': 'no-store',
    'content-security-policy': "default-src 'none'; sandbox",
  })
  expect(served.headers()['content-disposition']).toMatch(/^inline; filename="photo-[0-9a-f]{12}\.jpg"$/)
  const kept = await served.body()
  const { width, height, exif } = await sharp(kept).metadata()
  expect([width, height, exif]).toEqual([2000, 1500, undefined])

  await openStep(page, tag, 'Strip and wash')
  await page.getByRole('button', { name: 'Finding', exact: true }).tap()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel(/^What was found/).fill('Guide 3 is loose')
  await dialog.getByLabel('Choose a file').setInputFiles(await camera('#a04030'))
  await dialog.getByLabel(/^What it shows/).fill('Guide 3 from below')
  await isSound(page)
  await dialog.getByRole('button', { name: 'Report it' }).tap()
  await expect(dialog).toBeHidden()
  await expect(page.getByRole('region', { name: 'Photos' }).getByText('Guide 3 from below')).toBeVisible()

  await signIn(page, 'tamsin')
  await page.goto('/counter')
  await page.getByRole('link', { name: 'Guide 3 is loose' }).click()
  await isDrawn(page.getByRole('img', { name: /Guide 3 from below/ }))
  await page.getByLabel(/^Price/).fill('120')
  await page.getByLabel('How it was asked').fill('link')
  await page.getByRole('button', { name: 'Asked, no answer yet' }).click()
  await page.getByRole('button', { name: 'Make a link' }).click()
  const shown = page.getByText(/\/s\/[\w-]{32}/).first()
  const link = /\/s\/[\w-]{32}/.exec(await shown.innerText())?.[0] ?? ''

  const phone = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const customer = await phone.newPage()
  await customer.goto(link)
  const question = customer.getByRole('article', { name: 'Guide 3 is loose' })
  const picture = question.getByRole('img', { name: 'Guide 3 from below' })
  await isDrawn(picture)
  await isSound(customer)
  const theirs = (await picture.getAttribute('src')) ?? ''
  const headers = (await customer.request.get(theirs)).headers()
  expect(headers).toMatchObject({
    'cache-control': 'no-store',
    'content-security-policy': "default-src 'none'; sandbox",
    'referrer-policy': 'no-referrer',
    'x-robots-tag': 'noindex, nofollow',
  })
  // The link opens what was asked, and nothing else of the same head.
  const checkIn = address.split('/').at(-1) ?? ''
  expect((await customer.request.get(`${link}/photos/${checkIn}`)).status()).toBe(404)
  expect((await customer.request.get(address)).status()).toBe(401)

  // Of another head: it is gone everywhere.
  await signIn(page, 'orla')
  await openHead(page, tag)
  const all = page.getByRole('region', { name: 'Photos', exact: true })
  await expect(all.getByRole('img')).toHaveCount(2)
  await isSound(page)
  await all.getByRole('button', { name: /Guide 3 from below/ }).tap()
  await page.getByRole('dialog').getByRole('button', { name: 'Withdraw this photo' }).tap()
  await page.getByRole('dialog').getByLabel(/^Why/).fill('Another head')
  await isSound(page)
  await page.getByRole('dialog').getByRole('button', { name: 'Withdraw it' }).tap()
  await expect(all.getByRole('img')).toHaveCount(1)
  expect((await customer.request.get(theirs)).status()).toBe(404)
})

test('a photo comes from a page of the app, from somebody signed in, and is a photo', async ({
  page,
  request,
  baseURL,
}) => {
  const form = async (file: { name: string; mimeType: string; buffer: Buffer }) => ({
    op: crypto.randomUUID(),
    visitId: '0190a0a0-0000-7000-8000-000000000000',
    stepId: '',
    caption: '',
    file,
  })
  const own = { Origin: baseURL ?? '' }
  const whole = await camera('#808080')
  const nobody = await request.post('/api/photos', { headers: own, multipart: await form(whole) })
  expect(nobody.status()).toBe(401)

  await signIn(page, 'dov')
  const send = async (headers: Record<string, string>, file = whole) =>
    (await page.request.post('/api/photos', { headers, multipart: await form(file) })).status()
  expect(await send({ Origin: 'https://elsewhere.example' })).toBe(403)
  expect(await send({ Origin: 'null' })).toBe(403)
  // There is no such head: but it got that far.
  expect(await send(own)).toBe(404)
  expect(await send(own, { ...whole, buffer: Buffer.alloc(9 * 1024 * 1024) })).toBe(413)
})
