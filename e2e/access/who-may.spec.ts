import { expect, test } from '@playwright/test'
import { signIn } from '../person'

/** Role by page: what each may open. What they may change is tried on the use cases, with the rows looked at. */
const pages = [
  { path: '/counter', may: ['orla', 'tamsin', 'dov'] },
  { path: '/counter/labels', may: ['orla', 'tamsin', 'dov'] },
  { path: '/stations', may: ['orla', 'tamsin', 'dov'] },
  { path: '/away', may: ['orla', 'tamsin', 'dov'] },
  { path: '/cut-bench', may: ['orla', 'tamsin', 'dov'] },
  { path: '/counter/book', may: ['orla', 'tamsin'] },
  { path: '/back-room', may: ['orla'] },
  { path: '/back-room/people', may: ['orla'] },
  { path: '/back-room/castings', may: ['orla', 'tamsin', 'dov'] },
  { path: '/back-room/prices', may: ['orla', 'tamsin'] },
  { path: '/back-room/settings', may: ['orla'] },
  { path: '/back-room/shop', may: ['orla'] },
]

for (const person of ['orla', 'tamsin', 'dov']) {
  test(`what ${person} may open`, async ({ page }) => {
    test.setTimeout(180_000)
    await signIn(page, person)
    for (const { path, may } of pages) {
      const answer = await page.goto(path)
      expect([path, answer?.status()]).toEqual([path, may.includes(person) ? 200 : 403])
    }
  })
}

test('nobody who is not signed in sees a page, a paper or a change', async ({ request }) => {
  for (const { path } of pages) {
    const answer = await request.get(path, { maxRedirects: 0 })
    expect([path, answer.status()]).toEqual([path, 307])
  }
  const logo = `/api/logo/${'0'.repeat(64)}`
  const photo = '/api/photos/0190a0a0-0000-7000-8000-000000000000'
  const labels = '/api/papers/tag-labels?tag=T-0401'
  for (const path of [
    '/api/papers/job-sheet/26-0001',
    labels,
    '/api/changes',
    '/api/find?q=T-0401',
    photo,
    logo,
  ]) {
    expect([path, (await request.get(path)).status()]).toEqual([path, 401])
  }
})

test('the shop’s logo comes from its owner, from a page of the app', async ({ page, request, baseURL }) => {
  const own = { Origin: baseURL ?? '' }
  const file = { name: 'logo.png', mimeType: 'image/png', buffer: Buffer.from('no picture') }
  const sent = (headers: Record<string, string>, buffer = file.buffer) => ({
    headers,
    multipart: { op: crypto.randomUUID(), seen: '', file: { ...file, buffer } },
  })
  expect((await request.post('/api/logo', sent(own))).status()).toBe(401)
  const tried = async (name: string, what: ReturnType<typeof sent>) => {
    await signIn(page, name)
    return (await page.request.post('/api/logo', what)).status()
  }
  expect(await tried('dov', sent(own))).toBe(403)
  expect(await tried('tamsin', sent(own))).toBe(403)
  expect(await tried('orla', sent({ Origin: 'https://elsewhere.example' }))).toBe(403)
  // No picture, and too large a file: but they got that far.
  expect(await tried('orla', sent(own))).toBe(422)
  expect(await tried('orla', sent(own, Buffer.alloc(5 * 1024 * 1024)))).toBe(422)
})

test('what is not there is said to be not there, without an inside', async ({ page }) => {
  await signIn(page, 'orla')
  const nobody = '0190a0a0-0000-7000-8000-000000000000'
  for (const path of [
    '/no-such-page',
    `/heads/${nobody}`,
    '/heads/1',
    '/jobs/99-9999',
    `/away/${nobody}`,
    '/stations/nowhere',
    '/s/not-a-token',
  ]) {
    const answer = await page.goto(path)
    expect([path, answer?.status()]).toEqual([path, 404])
    expect(await page.locator('body').innerText()).not.toMatch(/at .*\.js:\d+|Prisma|node_modules/)
  }
})
