import { expect, test, type Page } from '@playwright/test'
import sharp from 'sharp'
import { demoPassword } from '../lib/demo/people'
import { onRecord } from '../tests/setup/on-record'
import { tabletOutbox } from '../tests/app/outbox/tablet-outbox'
import { queueStands, signInAtForm } from './person'
import { startServer, type Server } from './server'

/** A tablet whose server is stopped: what is done there, and what becomes of it. The whole file has a shop of its own. */

const folder = process.env.BRASSTAG_E2E_SPARE ?? ''

test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true, serviceWorkers: 'allow' })
test.describe.configure({ mode: 'serial' })

let server: Server
test.beforeAll(async () => {
  server = await startServer('demo', folder)
})
test.afterAll(() => server.stop())

const startAgain = async () => {
  server = await startServer('demo', folder, Number(new URL(server.url).port))
}

/** Signed in at a station that is kept: its queue, its steps, and the page that is shown without a server. */
async function atStation(page: Page, station: string): Promise<void> {
  await page.goto(`${server.url}/stations/${station}`)
  await queueStands(page)
  // The queue stands in the page before it is kept here.
  await expect.poll(() => page.evaluate(stationIsKept, station)).toBe(true)
}

/** In the browser: its store has the queue of the station. */
const stationIsKept = (station: string): Promise<boolean> =>
  new Promise((resolve) => {
    const opening = indexedDB.open('brasstag')
    // The app makes it: an empty one must not stand in its place.
    opening.onupgradeneeded = () => opening.transaction?.abort()
    opening.onerror = () => resolve(false)
    opening.onsuccess = () => {
      const db = opening.result
      const asking = db.transaction('stations').objectStore('stations').get(station)
      asking.onsuccess = () => {
        db.close()
        resolve(asking.result !== undefined)
      }
    }
  })

async function isKept(page: Page): Promise<void> {
  // The worker comes after a rest, when the browser has nothing else to do.
  const isThere = () => page.evaluate(async () => Boolean(await caches.match('/stations')))
  await expect.poll(isThere, { timeout: 30_000 }).toBe(true)
  await page.waitForLoadState('networkidle')
}

const line = (page: Page, step: string) => page.getByRole('link').filter({ hasText: step }).first()
const tagOf = async (page: Page, step: string) =>
  /T-\d{4}/.exec((await line(page, step).textContent()) ?? '')?.[0] ?? ''
const commit = (page: Page) => page.getByRole('button', { name: /^(Save and done|Done)$/ })
const keptHere = (page: Page) => page.getByText(/Kept here, not yet sent: \d/)
const toQueue = (page: Page) =>
  page
    .getByRole('link', { name: /^Queue/ })
    .first()
    .click()

test('a day without the server: ticks, a taking back, readings, a finding with its photo, and half a step typed', async ({
  page,
}) => {
  await signInAtForm(page, 'dov', server.url)
  await atStation(page, 'measuring-bench')
  await atStation(page, 'wash')
  await isKept(page)
  await server.stop()
  const stopped = Date.now()

  // A cold start: page and data come from this device.
  await page.goto(`${server.url}/stations/wash`)
  await queueStands(page)
  await expect(page.getByText('No connection')).toBeVisible()

  const [rinsed, washed] = [await tagOf(page, 'Rinse and dry'), await tagOf(page, 'Strip and wash')]
  await line(page, 'Rinse and dry').click()
  await commit(page).click()
  await expect(page.getByRole('status').filter({ hasText: 'Done.' })).toBeVisible()
  await expect(page.getByText('Done here, not sent yet.')).toBeVisible()
  await toQueue(page)
  await line(page, 'Strip and wash').click()
  await commit(page).click()
  await expect(page.getByText('Kept here, not yet sent: 2')).toBeVisible()
  await toQueue(page)
  const doneHere = page.getByRole('region', { name: 'Done here, not sent yet' })
  await expect(doneHere.getByRole('link')).toHaveCount(2)
  await doneHere.getByRole('link').filter({ hasText: rinsed }).click()
  await page.getByRole('button', { name: 'Take back' }).click()
  await expect(commit(page)).toBeEnabled()
  await commit(page).click({ delay: 450 })
  await expect(page.getByText('Kept here, not yet sent: 4')).toBeVisible()

  // A finding, and its photo.
  await page.getByRole('button', { name: 'Finding', exact: true }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('What was found').fill('Guide 2 is loose')
  const picture = await sharp({ create: { width: 640, height: 480, channels: 3, background: '#7f8a91' } })
    .jpeg()
    .toBuffer()
  // A large picture takes a tablet a second to read: it goes along all the same when the report is sent meanwhile.
  await page.evaluate(() => {
    const read = globalThis.createImageBitmap
    globalThis.createImageBitmap = async (picture: ImageBitmapSource) => {
      await new Promise((resolve) => setTimeout(resolve, 1500))
      return read(picture)
    }
  })
  await dialog.getByLabel('Take a photo').setInputFiles({ name: 'guide.jpg', mimeType: 'image/jpeg', buffer: picture })
  await dialog.getByRole('button', { name: 'Report it' }).click()
  await expect(page.getByText('Kept here, not yet sent: 6')).toBeVisible()

  // At another station that is kept, a reading that stands is put right, and another step is half typed.
  await page.goto(`${server.url}/stations/measuring-bench`)
  const measured = await tagOf(page, 'Measure chambers')
  await line(page, 'Measure chambers').click()
  const cell = page.getByRole('group', { name: 'Chamber volume', exact: true }).getByRole('textbox').first()
  const stood = (await cell.getAttribute('placeholder')) ?? ''
  await cell.fill('62.8')
  await page
    .getByText(/^Instead of /)
    .first()
    .click()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByText('Kept here, not yet sent: 7')).toBeVisible()
  expect(stood).not.toContain('62.8')
  await toQueue(page)
  await line(page, 'Seat check before').click()
  const half = page.getByRole('textbox').first()
  await half.fill('0.062')
  const address = page.url()

  await page.reload()
  await expect(page.getByRole('textbox').first()).toHaveValue('0.062')
  await expect(page.getByText('Kept here, not yet sent: 7')).toBeVisible()

  const visits = onRecord<{ id: string; tag: string }>(
    folder,
    `SELECT v."id", t."number" AS "tag" FROM "Visit" v JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
     WHERE t."number" IN (?, ?, ?) ORDER BY v."createdAt" DESC`,
    ...[rinsed, washed, measured],
  )
  const visitOf = (tag: string) => visits.find((one) => one.tag === tag)?.id ?? ''
  const newest = onRecord<{ seq: number }>(folder, 'SELECT MAX("seq") AS "seq" FROM "VisitEvent"')[0]?.seq ?? 0
  const started = Date.now()
  await startAgain()
  await expect(keptHere(page)).toHaveCount(0, { timeout: 70_000 })
  expect(page.url()).toBe(address)
  await expect(page.getByRole('textbox').first()).toHaveValue('0.062')

  // Everything is there once, in order.
  const done = () =>
    onRecord<{ visitId: string; kind: string; stepId: string }>(
      folder,
      'SELECT "visitId", "kind", "stepId" FROM "VisitEvent" WHERE "seq" > ? ORDER BY "seq"',
      newest,
    )
      .filter(({ kind }) => ['tick', 'undo', 'read'].includes(kind))
      .map(({ visitId, kind, stepId }) => [visits.find(({ id }) => id === visitId)?.tag, kind, stepId].join(' '))
  await expect
    .poll(done)
    .toEqual([
      `${rinsed} tick rinse`,
      `${washed} tick wash-in`,
      `${rinsed} undo rinse`,
      `${rinsed} tick rinse`,
      `${measured} read chambers`,
    ])
  const findings = onRecord<{ id: string }>(folder, 'SELECT "id" FROM "Finding" WHERE "what" = ?', 'Guide 2 is loose')
  expect(findings).toHaveLength(1)
  expect(onRecord(folder, 'SELECT "id" FROM "Photo" WHERE "findingId" = ?', findings[0]?.id ?? '')).toHaveLength(1)
  // The readings have the time they were taken, before the server was there again.
  const [set] = onRecord<{ takenAt: string | number }>(
    folder,
    'SELECT "takenAt" FROM "ReadingSet" WHERE "visitId" = ? ORDER BY "eventSeq" DESC LIMIT 1',
    visitOf(measured),
  )
  const takenAt = new Date(set?.takenAt ?? 0).getTime()
  expect(takenAt).toBeGreaterThan(stopped)
  expect(takenAt).toBeLessThan(started)
})

test('two tablets at one step: the one without a network sees both sides afterwards', async ({ page, browser }) => {
  await signInAtForm(page, 'dov', server.url)
  await atStation(page, 'wash')
  await isKept(page)
  // It says that there is no connection, and no longer once there is, though nothing changed meanwhile.
  await page.context().setOffline(true)
  await line(page, 'Final wash').click()
  await expect(page.getByText('No connection')).toBeVisible()
  await page.context().setOffline(false)
  await expect(page.getByText('No connection')).toHaveCount(0, { timeout: 15_000 })
  await toQueue(page)
  await line(page, 'Final wash').click()
  await commit(page).waitFor()
  await page.context().setOffline(true)
  await commit(page).click()
  await expect(page.getByText('Kept here, not yet sent: 1')).toBeVisible()

  const other = await (await browser.newContext()).newPage()
  await signInAtForm(other, 'orla', server.url)
  await other.goto(page.url())
  await commit(other).click()
  await expect(other.getByRole('status').filter({ hasText: 'Done.' })).toBeVisible()
  await other.context().close()

  await page.context().setOffline(false)
  const aside = page.getByRole('alert').filter({ hasText: 'Not taken: 1' })
  await expect(aside).toContainText('Final wash')
  await expect(aside).toContainText('ticked this step', { timeout: 40_000 })
  await aside.getByRole('button', { name: /remove it/ }).click()
  await expect(aside).toHaveCount(0)
})

test('signed out while the network was away: nothing is lost, and it is sent after the sign-in', async ({ page }) => {
  await signInAtForm(page, 'dov', server.url)
  await atStation(page, 'wash')
  await line(page, 'Rinse and dry').click()
  await commit(page).waitFor()
  await page.context().setOffline(true)
  await commit(page).click()
  await expect(page.getByText('Kept here, not yet sent: 1')).toBeVisible()
  await page.context().clearCookies()
  await page.context().setOffline(false)
  await expect(page.getByText('You are signed out')).toBeVisible({ timeout: 40_000 })
  await page.getByRole('link', { name: 'Sign in' }).click()
  await page.getByLabel('Name').fill('dov')
  await page.getByLabel('Password').fill(demoPassword)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('status').filter({ hasText: 'Done.' })).toBeVisible()
  await expect(keptHere(page)).toHaveCount(0)
})

test('a queue that an earlier build wrote is taken, thirty deeds in less than five seconds', async ({ page }) => {
  await signInAtForm(page, 'dov', server.url)
  await atStation(page, 'wash')
  const visit = /heads\/([^?]+)/.exec((await line(page, 'Crack check').getAttribute('href')) ?? '')?.[1] ?? ''
  const person = (await page.locator('[data-person]').first().getAttribute('data-person')) ?? ''
  await page.evaluate(
    async ({ visitId, personId }) => {
      const open = indexedDB.open('brasstag')
      await new Promise((resolve) => (open.onsuccess = resolve))
      const deeds = open.result.transaction('deeds', 'readwrite').objectStore('deeds')
      for (let count = 1; count <= 30; count++) {
        deeds.add({
          id: crypto.randomUUID(),
          kind: 'finding',
          version: 1,
          personId,
          takenAt: '2026-03-02T14:00:00.000Z',
          words: `Finding ${count}`,
          input: { visitId, stepId: 'crack', what: `Kept before the new build, ${count}` },
        })
      }
      await new Promise((resolve) => (deeds.transaction.oncomplete = resolve))
    },
    { visitId: visit, personId: person },
  )
  const count = () =>
    onRecord<{ n: number }>(
      folder,
      'SELECT COUNT(*) AS "n" FROM "Finding" WHERE "what" LIKE ?',
      'Kept before the new build%',
    )[0]?.n
  await page.reload()
  const began = Date.now()
  await expect.poll(count, { intervals: [100] }).toBe(30)
  expect(Date.now() - began).toBeLessThan(5000)
  await expect(keptHere(page)).toHaveCount(0)
})

test('a step opens from what is kept in less than 100 ms, on a processor four times slower', async ({ page }) => {
  await signInAtForm(page, 'dov', server.url)
  await atStation(page, 'measuring-bench')
  await isKept(page)
  const devtools = await page.context().newCDPSession(page)
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: 4 })
  const times: number[] = []
  for (let round = 0; round < 12; round++) {
    times.push(
      await page.evaluate(
        () =>
          new Promise<number>((resolve) => {
            const link = document.querySelector<HTMLElement>('section[aria-label="Ready"] a')
            const began = performance.now()
            const observer = new MutationObserver(() => {
              if (!document.querySelector('[data-commit]')) return
              observer.disconnect()
              resolve(performance.now() - began)
            })
            observer.observe(document, { childList: true, subtree: true })
            link?.click()
          }),
      ),
    )
    await toQueue(page)
    await queueStands(page)
  }
  // Other browsers work beside this one: the round that was disturbed the least says how long it takes.
  const least = Math.min(...times)
  test.info().annotations.push({ type: 'opening a step, ms', description: times.map((ms) => ms.toFixed(0)).join(', ') })
  expect(least, times.join(', ')).toBeLessThan(100)
})

/** Each round ends the server while both send; `npm run test:long` has twenty. */
const rounds = process.env.BRASSTAG_LONG_TESTS ? 20 : 2

test('the server killed again and again while two tablets send: everything kept is there once', async ({ page }) => {
  test.setTimeout(60_000 + rounds * 20_000)
  await signInAtForm(page, 'dov', server.url)
  await atStation(page, 'wash')
  const visit = /heads\/([^?]+)/.exec((await line(page, 'Crack check').getAttribute('href')) ?? '')?.[1] ?? ''
  const tablets: ReturnType<typeof tabletOutbox>[] = []
  for (const name of ['dov', 'ines']) {
    await signInAtForm(page, name, server.url)
    await atStation(page, 'wash')
    const personId = (await page.locator('[data-person]').first().getAttribute('data-person')) ?? ''
    const cookie = (await page.context().cookies()).map(({ name: key, value }) => `${key}=${value}`).join('; ')
    tablets.push(tabletOutbox(server.url, { personId, cookie }))
  }
  let count = 0
  for (let round = 0; round < rounds; round++) {
    const reported = tablets.flatMap(({ report }, place) =>
      Array.from({ length: 12 }, () => report(visit, `Killed ${place} ${(count += 1)}`)),
    )
    await new Promise((resolve) => setTimeout(resolve, 20 + round * 15))
    await server.kill()
    await Promise.all(reported)
    await startAgain()
    await Promise.all(tablets.map(({ outbox }) => outbox.wake()))
  }
  await expect.poll(() => tablets.flatMap(({ outbox }) => outbox.snapshot().deeds).length, { timeout: 60_000 }).toBe(0)
  const found = onRecord<{ what: string }>(folder, 'SELECT "what" FROM "Finding" WHERE "what" LIKE ?', 'Killed %')
  expect(found).toHaveLength(count)
  expect(new Set(found.map(({ what }) => what)).size).toBe(count)
  expect(tablets.reduce((sum, { acknowledged }) => sum + acknowledged.size, 0)).toBe(count)
  tablets.forEach(({ outbox }) => outbox.close())
})
