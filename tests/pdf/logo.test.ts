import sharp from 'sharp'
import { beforeAll, describe, expect, it } from 'vitest'
import type { ShopBlock } from '@/lib/core/spec/spec-sheet'
import { readLogo } from '@/lib/data/logo-picture'
import { estimatePaper } from '@/lib/pdf/estimate'
import { outsideSheet } from '@/lib/pdf/outside-sheet'
import { packedRows } from '@/lib/pdf/png'
import type { PrintSetting } from '@/lib/pdf/print-setting'
import { handOverSlip } from '@/lib/pdf/hand-over-slip'
import { specSheet } from '@/lib/pdf/spec-sheet'

import { imagesOf, readPdf } from './read-pdf'
import { structureOf } from './rendered'
import { estimate, handOverSlipOf } from './sample-desk-papers'
import { outside, setting, shop, spec } from './sample-papers'

/** A mark with an edge of its own and colours that no field of one colour has. */
const mark = (width: number, height: number) =>
  Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">
      <rect width="${width}" height="${height}" fill="#1d5c7a"/>
      <circle cx="${width / 2}" cy="${height / 2}" r="${Math.min(width, height) / 3}" fill="#e0c060"/>
    </svg>`,
  )

type Logo = { readonly bytes: Uint8Array; readonly widthPx: number; readonly heightPx: number }
let square: Logo
let wide: Logo
let tall: Logo
const roomy = { widthPx: 945, heightPx: 307 }
const made = async (width: number, height: number): Promise<Logo> =>
  readLogo(await sharp(mark(width, height)).png().toBuffer(), roomy)

beforeAll(async () => {
  square = await made(300, 300)
  wide = await made(1600, 100)
  tall = await made(60, 600)
})

const named = ({ widthPx, heightPx }: Logo): ShopBlock => ({
  ...shop,
  logo: { sha256: 'a'.repeat(64), widthPx, heightPx },
})

/** Each paper that leaves the shop, by its data's shop. */
const papers = {
  'outside sheet': (of: ShopBlock, how: PrintSetting) => outsideSheet({ ...outside, shop: of }, how),
  'spec sheet': (of: ShopBlock, how: PrintSetting) => specSheet({ ...spec, shop: of }, how),
  'spec sheet of a head that went back': (of: ShopBlock, how: PrintSetting) =>
    specSheet({ ...spec, outcome: 'returned as is', flow: [], shop: of }, how),
  estimate: (of: ShopBlock, how: PrintSetting) => estimatePaper({ ...estimate, shop: of }, how),
  'hand-over slip': (of: ShopBlock, how: PrintSetting) => handOverSlip({ ...handOverSlipOf, shop: of }, how),
}

const every = Object.entries(papers).flatMap(([name, print]) =>
  (['letter', 'a4'] as const).map((paper) => ({ name, paper, print })),
)

describe.each(every)('$name on $paper', ({ print, paper }) => {
  const printed = (logo: Logo) => print(named(logo), { ...setting, paper, logo: logo.bytes })

  it('has the logo once, at the head of its first page, pixel for pixel as it is kept', async () => {
    const bytes = await printed(square)
    const images = await imagesOf(bytes)
    expect(images).toHaveLength(1)
    const [image] = images
    expect(image).toMatchObject({ page: 1, widthPx: 300, heightPx: 300 })
    const kept = await sharp(square.bytes).raw().toBuffer()
    expect(Buffer.from(image?.pixels ?? []).equals(kept)).toBe(true)
    // At the margin of 10 mm, as high as a logo may be.
    expect(image?.at.x).toBeCloseTo(10, 3)
    expect(image?.at.y).toBeCloseTo(11, 3)
    expect(image?.at.width).toBeCloseTo(13, 3)
    expect(image?.at.height).toBeCloseTo(13, 3)
    expect(await structureOf(bytes)).toContain('No syntax or stream encoding errors found')
  })

  it('keeps a very wide and a very tall one in its room', async () => {
    // 1600 × 100 is 16 : 1, so 40 mm by 2.5 mm; 60 × 600 is 1 : 10, so 1.3 mm by 13 mm.
    const [ofWide, ofTall] = [(await imagesOf(await printed(wide)))[0], (await imagesOf(await printed(tall)))[0]]
    expect(ofWide?.at.width).toBeCloseTo(40, 3)
    expect(ofWide?.at.height).toBeCloseTo(2.5, 1)
    expect(ofTall?.at.height).toBeCloseTo(13, 3)
    expect(ofTall?.at.width).toBeCloseTo(1.3, 1)
  })

  it('says every word that it says without, on as many pages', async () => {
    const words = ({ text }: { text: string }) => text.split(/\s+/).filter(Boolean).sort()
    const without = await readPdf(await print(shop, { ...setting, paper }))
    for (const logo of [square, wide, tall]) {
      const withIt = await readPdf(await printed(logo))
      expect(words(withIt)).toEqual(words(without))
      expect(withIt.pages).toHaveLength(without.pages.length)
    }
    expect(await imagesOf(await print(shop, { ...setting, paper }))).toEqual([])
  })
})

describe('a paper with a logo', () => {
  it('is made twice the same', async () => {
    const once = await papers['spec sheet'](named(square), { ...setting, logo: square.bytes })
    const again = await papers['spec sheet'](named(square), { ...setting, logo: square.bytes })
    expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true)
  })

  it('has the picture’s rows as they were packed: to pack them anew would take as long as the sheet', async () => {
    const sheet = await specSheet({ ...spec, shop: named(square) }, { ...setting, logo: square.bytes })
    const rows = packedRowsOf(square.bytes)
    expect(rows.length).toBeGreaterThan(100)
    expect(Buffer.from(sheet).includes(rows)).toBe(true)
  })
})

/** The IDAT chunks of a PNG, one after the other (PNG specification, third edition, 5.3: length, type, data, check). */
function packedRowsOf(png: Uint8Array): Buffer {
  const file = Buffer.from(png)
  const rows: Buffer[] = []
  for (let at = 8; at < file.length;) {
    const length = file.readUInt32BE(at)
    if (file.toString('latin1', at + 4, at + 8) === 'IDAT') rows.push(file.subarray(at + 8, at + 8 + length))
    at += length + 12
  }
  return Buffer.concat(rows)
}

describe('the packed rows of a logo', () => {
  it('are refused of another kind of PNG, which a reader would show as noise', async () => {
    const others = [
      sharp(mark(30, 30)).png({ palette: true }),
      sharp(mark(30, 30)).flatten().toColourspace('b-w').png(),
      sharp(mark(30, 30)).ensureAlpha().png(),
      sharp(mark(30, 30)).flatten().png({ progressive: true }),
    ]
    for (const other of others) {
      const bytes = await other.toBuffer()
      expect(() => packedRows(bytes)).toThrow('another kind')
    }
    expect(packedRows(square.bytes)).toMatchObject({ widthPx: 300, heightPx: 300 })
  })
})
