import { createHash, randomUUID } from 'node:crypto'
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { readFile } from '@/lib/data/files'
import { loadDossier } from '@/lib/dossier/dossier'
import { askFindingSchema } from '@/lib/schemas/finding'
import { addPhotoSchema, withdrawPhotoSchema, type AddPhotoForm } from '@/lib/schemas/photo'
import { tickStepSchema } from '@/lib/schemas/visit'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { seeByLink } from '@/lib/use-cases/links/see-by-link'
import { addPhoto } from '@/lib/use-cases/photos/add-photo'
import { seeHeadPhotos, seePicture, seePictureByLink } from '@/lib/use-cases/photos/see-photos'
import { withdrawPhoto } from '@/lib/use-cases/photos/withdraw-photo'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'
import { gif, html, jpeg, plain, svg, telephoneJpeg } from './pictures'

const hour = 60 * 60 * 1000
const later = (hours: number) => new Date(monday.getTime() + hours * hour)
const nobody: Actor = { ...machinist, personId: 'p-without', roles: [] }

let database: TestDatabase
let visitId: string
let headId: string
let jobId: string

beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
  const job = await book({ heads: [head()], ordered: [{ work: 'flat-cut', note: '' }] })
  jobId = job.jobId
  visitId = job.heads[0]?.visitId ?? ''
  headId = job.heads[0]?.headId ?? ''
})

type Over = Partial<Omit<AddPhotoForm, 'sha256'>> & {
  bytes?: Uint8Array
  actor?: Actor
  now?: Date
  op?: string
}

async function add({ bytes, actor = machinist, now = monday, op, ...over }: Over = {}) {
  const file = bytes ?? (await jpeg())
  const sha256 = createHash('sha256').update(file).digest('hex')
  const { sha256: hash, ...input } = addPhotoSchema.parse({
    visitId,
    stepId: 'crack',
    caption: '',
    sha256,
    ...over,
  })
  return addPhoto(actor, { ...input, bytes: file }, at(now, op, hash))
}

const shown = async (actor = machinist, now = monday) => (await seeHeadPhotos(actor, headId, now)).photos

/** Every file under the data folder's store. */
function filesKept(): number {
  const store = join(database.folder, 'files')
  return existsSync(store)
    ? readdirSync(store, { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).length
    : 0
}

async function nothingKept(): Promise<void> {
  const { photo, file, operation, auditEntry } = database.client
  expect([await photo.count(), await file.count(), await operation.count(), filesKept()]).toEqual([0, 0, 0, 0])
  expect(await auditEntry.count({ where: { action: 'photo.add' } })).toBe(0)
}

describe('what is kept of a picture', () => {
  it('is upright, and nothing that the telephone wrote into it', async () => {
    const sent = await telephoneJpeg()
    const before = await sharp(sent).metadata()
    // The test would prove nothing if the place were not in it.
    expect(before.exif?.includes('Fernglas')).toBe(true)
    // Tag 8825 (hexadecimal) of EXIF points at the place.
    expect(before.exif?.includes(Buffer.from([0x25, 0x88]))).toBe(true)
    expect(before.orientation).toBe(6)
    expect([before.width, before.height]).toEqual([60, 20])
    const { photoId } = await add({ bytes: sent, caption: 'Number stamped beside chamber 1' })
    const row = await database.client.photo.findUniqueOrThrow({ where: { id: photoId } })
    // A quarter turn: 60 × 20 lies on its side.
    expect([row.widthPx, row.heightPx]).toEqual([20, 60])
    const kept = await readFile(row.sha256)
    const after = await sharp(kept).metadata()
    expect([after.format, after.width, after.height]).toEqual(['jpeg', 20, 60])
    expect([after.exif, after.xmp, after.iptc, after.icc, after.orientation]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ])
    expect(Buffer.from(kept).includes('Exif')).toBe(false)
    expect(Buffer.from(kept).includes('Fernglas')).toBe(false)
    expect(await database.client.file.findUniqueOrThrow({ where: { sha256: row.sha256 } })).toMatchObject({
      type: 'image/jpeg',
      size: kept.byteLength,
    })
  })

  it('has no edge longer than 2000, and a small one for lists', async () => {
    const { photoId } = await add({ bytes: await jpeg(3000, 1500) })
    const sizes = await Promise.all(
      (['full', 'small'] as const).map(async (size) => {
        const { width, height, format } = await sharp(await seePicture(counter, photoId, size)).metadata()
        return [width, height, format]
      }),
    )
    expect(sizes).toEqual([
      [2000, 1000, 'jpeg'],
      [480, 240, 'jpeg'],
    ])
  })

  it.each(['png', 'webp', 'avif'] as const)('%s is taken and becomes a JPEG', async (format) => {
    const { photoId } = await add({ bytes: await plain(30, 20).toFormat(format).toBuffer() })
    expect((await sharp(await seePicture(owner, photoId, 'full')).metadata()).format).toBe('jpeg')
  })
})

describe('what is no picture', () => {
  it('is refused by what it is, whatever it is called, and nothing is kept', async () => {
    const whole = await jpeg(400, 300)
    const cases: [string, Uint8Array, RegExp][] = [
      ['SVG', svg, /not a picture that can be kept/],
      ['SVG behind a byte order mark', Buffer.concat([Buffer.from('\ufeff'), svg]), /not a picture that can be kept/],
      ['GIF', await gif(), /not a picture that can be kept/],
      ['a page', html, /not a picture that can be kept/],
      ['a page behind the first bytes of a JPEG', Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), html]), /damaged/],
      ['half a JPEG', whole.subarray(0, whole.byteLength / 2), /damaged or not whole/],
      ['nothing', new Uint8Array(), /not a picture that can be kept/],
      ['HEIC by its first bytes', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'), /HEIC/],
    ]
    for (const [name, bytes, words] of cases) {
      const refusal = await refusalOf(add({ bytes, op: randomUUID() }))
      expect([name, refusal.code, words.test(refusal.message)]).toEqual([name, 'unreadable', true])
    }
    await nothingKept()
  })

  it('a small file that would become a huge picture is not opened', async () => {
    // 9000 × 9000 = 81 million pixels in a few kilobytes.
    const bomb = await plain(9000, 9000).png({ compressionLevel: 9 }).toBuffer()
    expect(bomb.byteLength).toBeLessThan(1_000_000)
    expect(await refusalOf(add({ bytes: bomb }))).toMatchObject({
      code: 'out-of-range',
      message: expect.stringContaining('64 million pixels') as string,
    })
    await nothingKept()
  })

  it('a file over 8 MB is not opened', async () => {
    const large = Buffer.concat([await jpeg(), Buffer.alloc(8 * 1024 * 1024)])
    expect(await refusalOf(add({ bytes: large }))).toMatchObject({ code: 'out-of-range' })
    await nothingKept()
  })
})

describe('sent twice', () => {
  it('the same operation is one photo; the same with another picture is refused', async () => {
    const op = randomUUID()
    const first = await add({ op })
    expect(await add({ op })).toEqual(first)
    expect(await shown()).toHaveLength(1)
    const other = await jpeg(40, 30, '#102030')
    expect((await refusalOf(add({ op, bytes: other }))).code).toBe('operation-reused')
    expect(await shown()).toHaveLength(1)
  })
})

describe('who may', () => {
  it.each([
    ['counter', counter],
    ['machinist', machinist],
    ['owner', owner],
  ])('the %s adds and sees', async (_role, actor) => {
    const { photoId } = await add({ actor })
    expect((await seePicture(actor, photoId, 'full')).byteLength).toBeGreaterThan(100)
  })

  it('somebody without a role does neither', async () => {
    expect((await refusalOf(add({ actor: nobody }))).code).toBe('not-allowed')
    await nothingKept()
    const { photoId } = await add()
    expect((await refusalOf(seePicture(nobody, photoId, 'full'))).code).toBe('not-allowed')
  })

  it('a finding, a hold or an order of another head is refused', async () => {
    const elsewhere = (await book({ heads: [head()] })).heads[0]?.visitId ?? ''
    const finding = await reportFinding(
      machinist,
      { visitId: elsewhere, stepId: null, what: 'Loose guide' },
      at(monday),
    )
    const hold = await openHold(machinist, { visitId: elsewhere, stepId: null, reason: 'Cracked' }, at(monday))
    for (const part of [
      { findingId: finding.findingId },
      { holdId: hold.holdId },
      { orderId: randomUUID() },
      { visitId: randomUUID() },
    ]) {
      expect((await refusalOf(add(part))).code).toBe('not-found')
    }
    await nothingKept()
  })

  it('a head that has left takes no more', async () => {
    await returnAsIs(owner, { visitId, reason: 'Cracked through' }, at(monday))
    expect((await refusalOf(add())).code).toBe('wrong-state')
    await nothingKept()
  })
})

describe('withdrawn', () => {
  const withdraw = (photoId: string, actor: Actor, now = monday) =>
    withdrawPhoto(actor, withdrawPhotoSchema.parse({ photoId, reason: 'Another head' }), at(now))

  it('by who took it, the same day: the row stays with the reason, and nobody sees it', async () => {
    const { photoId } = await add()
    expect((await shown(machinist, later(9)))[0]?.mayWithdraw).toBe(true)
    await withdraw(photoId, machinist, later(9))
    expect(await shown()).toEqual([])
    expect((await refusalOf(seePicture(owner, photoId, 'full'))).code).toBe('not-found')
    expect(await database.client.photo.findUniqueOrThrow({ where: { id: photoId } })).toMatchObject({
      withdrawnById: machinist.personId,
      withdrawnWhy: 'Another head',
    })
    const trail = await database.client.auditEntry.findMany({
      where: { subjectId: photoId },
      orderBy: { seq: 'asc' },
    })
    expect(trail.map(({ action, actorId }) => [action, actorId])).toEqual([
      ['photo.add', machinist.personId],
      ['photo.withdraw', machinist.personId],
    ])
    expect((await refusalOf(withdraw(photoId, owner))).code).toBe('not-found')
  })

  it('not by another, not by who took it on another day of the shop, but by the owner', async () => {
    const { photoId } = await add()
    expect((await refusalOf(withdraw(photoId, counter))).code).toBe('not-allowed')
    // 8:00 in Chicago and seventeen hours: one o'clock of the next day.
    expect((await refusalOf(withdraw(photoId, machinist, later(17)))).code).toBe('not-allowed')
    expect(await shown()).toHaveLength(1)
    await withdraw(photoId, owner, later(200))
    expect(await shown()).toEqual([])
  })
})

describe('the photo that check-in asks for', () => {
  const owed = async () =>
    (await loadDossier(database.client, visitId)).route
      .find(({ stepId }) => stepId === 'check-in')
      ?.owes.find(({ kind }) => kind === 'photo')?.missing

  async function seenNow() {
    const { visit } = await loadDossier(database.client, visitId)
    return visit.events.findLast(({ stepId }) => stepId === 'check-in')?.seq ?? 0
  }

  async function tick(photo: string | null, seenBefore?: number) {
    const seen = seenBefore ?? (await seenNow())
    const answers = { condition: 'sound', 'came-with': 'bare', ...(photo === null ? {} : { photo }) }
    const readings = Object.entries(answers).map(([kind, text]) => ({
      kind,
      point: '',
      text,
      notTaken: null,
    }))
    const entry = { readings, instrumentId: null, conditions: {}, takenAt: null }
    const step = { stepId: 'check-in', occurrence: '', orderId: null }
    return tickStep(machinist, tickStepSchema.parse({ visitId, step, seen, entry }), at(monday))
  }

  it('is owed, is not answered by words that claim it, and is by the photo', async () => {
    expect(await owed()).toEqual([''])
    expect((await refusalOf(tick(null))).code).toBe('owed')
    const claimed = await refusalOf(tick('taken'))
    expect([claimed.code, Object.keys(claimed.fields)]).toEqual(['owed', ['photo|']])
    expect((await refusalOf(tick('no photo'))).code).toBe('owed')
    await add({ stepId: 'check-in' })
    expect(await owed()).toEqual([])
    await expect(tick(null)).resolves.toMatchObject({ label: 'Check in' })
  })

  it('taken by another person is said to whoever ticks without having seen it', async () => {
    const seen = await seenNow()
    await add({ stepId: 'check-in', actor: owner })
    expect((await refusalOf(tick(null, seen))).code).toBe('conflict')
  })

  it('goes before the tick of whoever took it: what they saw before it still counts', async () => {
    const seen = await seenNow()
    await add({ stepId: 'check-in' })
    await expect(tick(null, seen)).resolves.toMatchObject({ label: 'Check in' })
    // Ticked: a second tick from before the first is no photo.
    expect((await refusalOf(tick(null, seen))).code).toBe('conflict')
  })

  it('is answered by why there is none', async () => {
    await expect(tick('no photo: the camera is away')).resolves.toMatchObject({ label: 'Check in' })
  })

  it('is not answered by a photo of another step, and is asked again when the only one is withdrawn', async () => {
    await add({ stepId: 'crack' })
    expect(await owed()).toEqual([''])
    const first = await add({ stepId: 'check-in' })
    const second = await add({ stepId: 'check-in', bytes: await jpeg(50, 50) })
    const withdraw = (photoId: string) => withdrawPhoto(machinist, { photoId, reason: 'Another head' }, at(monday))
    await withdraw(first.photoId)
    expect(await owed()).toEqual([])
    await withdraw(second.photoId)
    expect(await owed()).toEqual([''])
  })
})

describe('on the customer’s link', () => {
  const ask = (findingId: string) =>
    askFinding(
      counter,
      askFindingSchema.parse({ findingId, version: 1, price: '80', tax: '', addsWork: [], how: 'link' }),
      at(monday),
    )
  const tokenTo = async (job: string) =>
    (await makeCustomerLink(counter, { jobId: job }, at(monday))).path.slice('/s/'.length)

  it('stand the photos of what was asked on this job, and no others', async () => {
    process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
    const report = (what: string) => reportFinding(machinist, { visitId, stepId: null, what }, at(monday))
    const asked = (await report('Guide 3 is loose')).findingId
    const unasked = (await report('Seat 2 is pitted')).findingId
    const ofAsked = await add({ findingId: asked, caption: 'Guide 3 from below' })
    const ofUnasked = await add({ findingId: unasked, bytes: await jpeg(41, 30) })
    const ofStep = await add({ bytes: await jpeg(42, 30) })
    const token = await tokenTo(jobId)
    const other = await tokenTo((await book({ heads: [head()] })).jobId)
    const opened = (photoId: string, by = token) => seePictureByLink(by, photoId, 'small', monday)

    // Not asked yet: even its photo is the shop's own.
    expect((await refusalOf(opened(ofAsked.photoId))).code).toBe('not-found')
    await ask(asked)
    expect((await sharp(await opened(ofAsked.photoId)).metadata()).format).toBe('jpeg')
    const view = await seeByLink(token, monday)
    expect(view.questions.map(({ what, photos }) => [what, photos.map(({ id, caption }) => [id, caption])])).toEqual([
      ['Guide 3 is loose', [[ofAsked.photoId, 'Guide 3 from below']]],
    ])
    const dead = 'This link does not open anything.'
    for (const [photoId, by] of [
      [ofUnasked.photoId, token],
      [ofStep.photoId, token],
      [randomUUID(), token],
      [ofAsked.photoId, other],
      [ofAsked.photoId, 'x'.repeat(32)],
    ] as const) {
      expect(await refusalOf(opened(photoId, by))).toMatchObject({ code: 'not-found', message: dead })
    }
    await withdrawPhoto(owner, { photoId: ofAsked.photoId, reason: 'Another head' }, at(monday))
    expect((await refusalOf(opened(ofAsked.photoId))).message).toBe(dead)
    expect((await seeByLink(token, monday)).questions[0]?.photos).toEqual([])
  })
})
