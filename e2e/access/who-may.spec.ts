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
  { path: '/back-room/taxes', may: ['orla', 'tamsin'] },
  { path: '/back-room/bookkeeper', may: ['orla'] },
  { path: '/back-room/backup', may: ['orla'] },
  { path: '/back-room/messages', may: ['orla'] },
  { path: '/counter/unpaid', may: ['orla', 'tamsin'] },
  { path: '/back-room/settings', may: ['orla'] },
  { path: '/back-room/shop', may: ['orla'] },
  { path: '/back-room/tablets', may: ['orla'] },
  { path: '/account', may: ['orla', 'tamsin', 'dov'] },
]

/** A file that is sent as the shop's logo, and is no picture: nothing of the shop is changed by it. */
const logoSent = (headers: Record<string, string>, bytes = 20) => ({
  headers,
  multipart: {
    op: crypto.randomUUID(),
    seen: '',
    file: { name: 'logo.png', mimeType: 'image/png', buffer: Buffer.alloc(bytes) },
  },
})

for (const person of ['orla', 'tamsin', 'dov']) {
  test(`what ${person} may open, and who may choose the logo`, async ({ page, baseURL }) => {
    test.setTimeout(180_000)
    await signIn(page, person)
    for (const { path, may } of pages) {
      const answer = await page.goto(path)
      expect([path, answer?.status()]).toEqual([path, may.includes(person) ? 200 : 403])
    }
    const send = async (origin: string, bytes?: number) =>
      (await page.request.post('/api/logo', logoSent({ Origin: origin }, bytes))).status()
    const progress = (await page.request.get('/api/export/progress')).status()
    expect(progress).toBe(person === 'orla' ? 200 : 403)
    if (person !== 'orla') expect((await page.request.get('/api/export')).status()).toBe(403)
    // The owner gets as far as the file: no picture, and one that is too large.
    const answered = person === 'orla' ? 422 : 403
    expect(await send(baseURL ?? '')).toBe(answered)
    if (person === 'orla') expect(await send(baseURL ?? '', 5 * 1024 * 1024)).toBe(413)
    expect(await send('https://elsewhere.example')).toBe(403)
  })
}

test('nobody who is not signed in sees a page, a paper or a change, nor makes one', async ({ request, baseURL }) => {
  for (const { path } of pages) {
    const answer = await request.get(path, { maxRedirects: 0 })
    expect([path, answer.status()]).toEqual([path, 307])
  }
  const logo = `/api/logo/${'0'.repeat(64)}`
  const photo = '/api/photos/0190a0a0-0000-7000-8000-000000000000'
  const labels = '/api/papers/tag-labels?tag=T-0401'
  const money = '/api/papers/money/0190a0a0-0000-7000-8000-000000000000'
  const books = '/api/books/tax?from=2026-03-01&to=2026-03-31'
  const job = '/api/papers/job-sheet/26-0001'
  for (const path of [
    job,
    money,
    books,
    '/api/export',
    '/api/export/progress',
    labels,
    '/api/changes',
    '/api/find?q=T-0401',
    photo,
    logo,
  ]) {
    expect([path, (await request.get(path)).status()]).toEqual([path, 401])
  }
  expect((await request.post('/api/logo', logoSent({ Origin: baseURL ?? '' }))).status()).toBe(401)
  const touch = (headers: Record<string, string>) => request.post('/api/tablet/touch', { headers })
  expect((await touch({ Origin: baseURL ?? '' })).status()).toBe(401)
  expect((await touch({ Origin: 'https://elsewhere.example' })).status()).toBe(403)
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
