import { createHash, randomUUID } from 'node:crypto'
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { readFile } from '@/lib/data/files'
import { auditChanges } from '@/lib/data/stored/records'
import { chooseLogoSchema, removeLogoSchema } from '@/lib/schemas/logo'
import { changeShopSchema } from '@/lib/schemas/shop'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { revokeCustomerLink } from '@/lib/use-cases/links/revoke-customer-link'
import { seeByLink } from '@/lib/use-cases/links/see-by-link'
import { changeShop } from '@/lib/use-cases/shop/change-shop'
import { chooseLogo } from '@/lib/use-cases/shop/choose-logo'
import { removeLogo } from '@/lib/use-cases/shop/remove-logo'
import { seeLogo, seeLogoByLink } from '@/lib/use-cases/shop/see-logo'
import { seeShop } from '@/lib/use-cases/shop/see-shop'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'
import { gif, html, plain, svg, telephoneJpeg } from '../photos/pictures'

let database: TestDatabase
beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
})

const png = (width = 60, height = 40, colour = '#204050') => plain(width, height, colour).png().toBuffer()

type Over = { bytes?: Uint8Array; seen?: string; actor?: Actor; op?: string }

async function choose({ bytes, seen = '', actor = owner, op }: Over = {}) {
  const file = bytes ?? (await png())
  const sha256 = createHash('sha256').update(file).digest('hex')
  const { sha256: hash, ...input } = chooseLogoSchema.parse({ seen, sha256 })
  return chooseLogo(actor, { ...input, bytes: file }, at(monday, op, hash))
}

const remove = (seen: string, actor: Actor = owner) => removeLogo(actor, removeLogoSchema.parse({ seen }), at(monday))

const row = () => database.client.shop.findUniqueOrThrow({ where: { id: 1 } })
const logoNow = async () => {
  const { logoSha256, logoWidthPx, logoHeightPx } = await row()
  return [logoSha256, logoWidthPx, logoHeightPx]
}

function filesKept(): number {
  const store = join(database.folder, 'files')
  return existsSync(store)
    ? readdirSync(store, { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).length
    : 0
}

const trail = () => database.client.auditEntry.findMany({ where: { subject: 'shop-logo' }, orderBy: { seq: 'asc' } })

async function nothingKept(): Promise<void> {
  expect(await logoNow()).toEqual([null, null, null])
  expect([await database.client.file.count(), await database.client.operation.count(), filesKept()]).toEqual([0, 0, 0])
  expect(await trail()).toEqual([])
}

describe('what is kept of a logo', () => {
  it('is upright, a PNG, and nothing that the old file said of who made it and where', async () => {
    const sent = await telephoneJpeg()
    expect((await sharp(sent).metadata()).exif?.includes('Fernglas')).toBe(true)
    const { sha256 } = await choose({ bytes: sent })
    // A quarter turn: 60 × 20 lies on its side.
    expect(await logoNow()).toEqual([sha256, 20, 60])
    const kept = await readFile(sha256)
    const { format, width, height, channels, hasAlpha, exif, icc, xmp } = await sharp(kept).metadata()
    expect([format, width, height, channels, hasAlpha]).toEqual(['png', 20, 60, 3, false])
    expect([exif, icc, xmp]).toEqual([undefined, undefined, undefined])
    expect(Buffer.from(kept).includes('Fernglas')).toBe(false)
    expect(await database.client.file.findUniqueOrThrow({ where: { sha256 } })).toMatchObject({
      type: 'image/png',
      size: kept.byteLength,
    })
  })

  it('stands on white where it was transparent', async () => {
    const mark = Buffer.from(
      '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="40"><rect x="10" y="10" width="20" height="20" fill="#204050"/></svg>',
    )
    const { sha256 } = await choose({ bytes: await sharp(mark).png().toBuffer() })
    const pixels = await sharp(await readFile(sha256))
      .raw()
      .toBuffer()
    const at = (x: number, y: number) => [...pixels.subarray((y * 40 + x) * 3, (y * 40 + x) * 3 + 3)]
    expect([at(0, 0), at(39, 39), at(20, 20)]).toEqual([
      [255, 255, 255],
      [255, 255, 255],
      [0x20, 0x40, 0x50],
    ])
  })

  it('has no more pixels than print in its room of 40 × 13 mm', async () => {
    // 600 dots an inch: 945 by 307. 3000 × 1500 is bounded by its height, 3000 × 300 by its width.
    await choose({ bytes: await png(3000, 1500) })
    const [first, ...size] = await logoNow()
    expect(size).toEqual([614, 307])
    await choose({ bytes: await png(3000, 300), seen: String(first) })
    expect((await logoNow()).slice(1)).toEqual([945, 95])
  })

  it.each(['png', 'jpeg', 'webp'] as const)('%s is taken', async (format) => {
    const { sha256 } = await choose({ bytes: await plain(30, 20).toFormat(format).toBuffer() })
    expect((await sharp(await seeLogo(owner, sha256)).metadata()).format).toBe('png')
  })
})

describe('what cannot be a logo', () => {
  it('is refused by what it is, whatever it is called, in words that name what can, and nothing is kept', async () => {
    const whole = await png(300, 200)
    const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
    const kinds = /PNG, JPEG or WebP.*SVG.*saved as PNG/
    const cases: [string, Uint8Array, RegExp][] = [
      ['SVG', svg, kinds],
      ['SVG behind a byte order mark', Buffer.concat([Buffer.from('\ufeff'), svg]), kinds],
      ['PDF', Buffer.from('%PDF-1.7\n'), kinds],
      ['GIF', await gif(), kinds],
      ['AVIF', await plain(30, 20).avif().toBuffer(), kinds],
      ['a page', html, kinds],
      ['nothing', new Uint8Array(), kinds],
      ['SVG behind the first bytes of a PNG', Buffer.concat([signature, svg]), /damaged or not whole/],
      ['half a PNG', whole.subarray(0, whole.byteLength / 2), /damaged or not whole/],
      ['white on white', await png(60, 40, '#fefefe'), /Nothing of this picture would be seen/],
      [
        'white on nothing',
        await sharp({
          create: { width: 60, height: 40, channels: 4, background: { r: 255, g: 255, b: 255, alpha: 0.5 } },
        })
          .png()
          .toBuffer(),
        /Nothing of this picture would be seen/,
      ],
    ]
    for (const [name, bytes, words] of cases) {
      const refusal = await refusalOf(choose({ bytes, op: randomUUID() }))
      expect([name, refusal.code, words.test(refusal.message)]).toEqual([name, 'unreadable', true])
    }
    await nothingKept()
  })

  it('is a file over 4 MB, and a small one that would become a huge picture', async () => {
    const large = Buffer.concat([await png(), Buffer.alloc(4 * 1024 * 1024)])
    const tooLarge = await refusalOf(choose({ bytes: large }))
    expect([tooLarge.code, tooLarge.message.includes('larger than 4 MB')]).toEqual(['out-of-range', true])
    // 9000 × 9000 = 81 million pixels.
    const bomb = await plain(9000, 9000).png({ compressionLevel: 9 }).toBuffer()
    expect(bomb.byteLength).toBeLessThan(1_000_000)
    expect((await refusalOf(choose({ bytes: bomb }))).message).toContain('64 million pixels')
    await nothingKept()
  })
})

describe('who may', () => {
  const others: [string, Actor][] = [
    ['counter', counter],
    ['machinist', machinist],
    ['somebody without a role', { ...owner, roles: [] }],
  ]
  it.each(others)('the %s neither chooses one, nor takes it away, nor opens it here', async (_who, actor) => {
    expect((await refusalOf(choose({ actor }))).code).toBe('not-allowed')
    await nothingKept()
    const { sha256 } = await choose()
    expect((await refusalOf(remove(sha256, actor))).code).toBe('not-allowed')
    expect((await refusalOf(seeLogo(actor, sha256))).code).toBe('not-allowed')
    expect(await logoNow()).toEqual([sha256, 60, 40])
    expect(await trail()).toHaveLength(1)
  })
})

describe('a change of the logo', () => {
  it('is put down to whoever made it, with what was and what is', async () => {
    const { sha256 } = await choose()
    const other = await choose({ bytes: await png(30, 30, '#803020'), seen: sha256 })
    await remove(other.sha256)
    expect(await logoNow()).toEqual([null, null, null])
    expect(
      (await trail()).map(({ action, actorId, seq, changes }) => [action, actorId, auditChanges.read(changes, seq)]),
    ).toEqual([
      ['shop-logo.set', owner.personId, { logo: { from: null, to: sha256 } }],
      ['shop-logo.set', owner.personId, { logo: { from: sha256, to: other.sha256 } }],
      ['shop-logo.remove', owner.personId, { logo: { from: other.sha256, to: null } }],
    ])
    expect((await seeShop(owner)).lastLogo).toMatchObject({ by: owner.name, at: monday })
  })

  it('is a conflict when the page showed another, and then changes nothing', async () => {
    const { sha256 } = await choose()
    const stale = await refusalOf(choose({ bytes: await png(30, 30) }))
    expect([stale.code, stale.message.includes('the logo')]).toEqual(['conflict', true])
    expect((await refusalOf(remove(''))).code).toBe('conflict')
    expect((await refusalOf(remove('f'.repeat(64)))).code).toBe('conflict')
    expect(await logoNow()).toEqual([sha256, 60, 40])
    expect(await trail()).toHaveLength(1)
  })

  it('and one of the shop’s words do not get in each other’s way', async () => {
    const { version } = await row()
    const { sha256 } = await choose()
    const words = {
      name: 'Quay Street Heads',
      address: '2 Quay Street',
      phone: '',
      locale: 'en-US',
      paper: 'a4',
    }
    await changeShop(owner, changeShopSchema.parse({ ...words, version }), at(monday))
    await remove(sha256)
    expect(await row()).toMatchObject({ address: '2 Quay Street', logoSha256: null })
  })

  it('sent twice is one: the same operation gives the same answer, with another picture it is refused', async () => {
    const op = randomUUID()
    const first = await choose({ op })
    expect(await choose({ op })).toEqual(first)
    expect(await trail()).toHaveLength(1)
    expect((await refusalOf(choose({ op, bytes: await png(30, 30) }))).code).toBe('operation-reused')
    expect((await logoNow())[0]).toBe(first.sha256)
  })
})

describe('the logo is served', () => {
  it('as what it is now: the address of an earlier one, or of another file, opens nothing', async () => {
    const { sha256 } = await choose()
    const other = await choose({ bytes: await png(30, 30, '#803020'), seen: sha256 })
    expect((await sharp(await seeLogo(owner, other.sha256)).metadata()).width).toBe(30)
    for (const unknown of [sha256, 'f'.repeat(64), '../../secret', '']) {
      expect((await refusalOf(seeLogo(owner, unknown))).code).toBe('not-found')
    }
  })

  it('to a customer by a link that opens something, and by no other', async () => {
    process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
    const { jobId } = await book({ heads: [head()] })
    const { path, linkId } = await makeCustomerLink(counter, { jobId }, at(monday))
    const token = path.slice('/s/'.length)
    expect((await refusalOf(seeLogoByLink(token, monday))).code).toBe('not-found')
    expect((await seeByLink(token, monday)).shop).toEqual({ name: 'Quay Street Heads', lines: [] })
    const { sha256 } = await choose()
    expect(Buffer.from(await seeLogoByLink(token, monday)).equals(Buffer.from(await readFile(sha256)))).toBe(true)
    expect((await seeByLink(token, monday)).shop.logo).toEqual({ sha256, widthPx: 60, heightPx: 40 })
    const years = new Date(monday.getTime() + 5 * 365 * 24 * 3_600_000)
    expect((await refusalOf(seeLogoByLink('x'.repeat(32), monday))).code).toBe('not-found')
    expect((await refusalOf(seeLogoByLink(token, years))).code).toBe('not-found')
    await revokeCustomerLink(counter, { linkId }, at(monday))
    expect((await refusalOf(seeLogoByLink(token, monday))).code).toBe('not-found')
  })
})
