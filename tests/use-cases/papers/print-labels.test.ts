import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { tagOf } from '@/lib/core/shop/tag-number'
import { changeTagSchema, takeOffTagSchema } from '@/lib/schemas/tag'
import { handOverSchema } from '@/lib/schemas/release'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { changeTag } from '@/lib/use-cases/heads/change-tag'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { takeOffTag } from '@/lib/use-cases/heads/take-off-tag'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { printLabelsOfTags } from '@/lib/use-cases/papers/print-labels'
import { seeLabelHeads } from '@/lib/use-cases/papers/see-label-heads'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { readPdf } from '@/tests/pdf/read-pdf'
import { decoded, greyPages, type Grey } from '@/tests/pdf/rendered'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { selectsOf } from '@/tests/setup/statements'
import { at, book, counter, head, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 120_000 })

beforeAll(() => {
  vi.stubEnv('NEXTAUTH_SECRET', 'a secret of a test, which is long enough')
  vi.stubEnv('BRASSTAG_URL', 'http://shop.test')
})

const nobody: Actor = { ...machinist, roles: [] }
const later = (minutes: number) => at(new Date(monday.getTime() + minutes * 60_000))

const labels = async (tags: readonly string[], first: number | null = null) =>
  readPdf(await (await printLabelsOfTags(counter, { first, tags }, monday)).bytes())
const tagsOn = (text: string) => text.match(/\b(?:T-\d{4}|SPARE-\d)\b/g) ?? []
const see = (tags: readonly string[] = [], now = monday, page = 1) => seeLabelHeads(counter, { tags, page }, now)

const versionOf = async (headId: string) => (await seeHead(owner, headId)).version

async function renumber(headId: string, number: string): Promise<void> {
  const version = await versionOf(headId)
  await changeTag(owner, changeTagSchema.parse({ headId, version, number, reason: 'lost' }), later(1))
}

/** The head goes back to its customer and its tag comes off. */
async function leave(job: BookedJob, headId: string, visitId: string): Promise<void> {
  await returnAsIs(owner, { visitId, reason: 'the customer wants it back' }, later(2))
  const heads = [{ visitId, side: 'not said', partsBack: '' }]
  const given = { jobId: job.jobId, takenBy: 'Tamsin Rook', note: '', heads, unpaidReason: 'goes back as is' }
  await handOver(owner, handOverSchema.parse(given), later(3))
  const version = await versionOf(headId)
  await takeOffTag(owner, takeOffTagSchema.parse({ headId, version, reason: '' }), later(4))
}

describe('labels for heads of several jobs', () => {
  /** T-0401 and T-0402; T-0403 and T-0404; T-0405 and T-0406. */
  let jobs: readonly BookedJob[]
  beforeAll(async () => {
    await openShop(await testDatabase())
    jobs = [await book(), await book(), await book()]
    await renumber(jobs[1]?.heads[1]?.headId ?? '', 'SPARE-9')
    const gone = jobs[2]?.heads[0]
    await leave(jobs[2]!, gone?.headId ?? '', gone?.visitId ?? '')
  })

  it('are printed in the order asked, each with its own job', async () => {
    const { pages, sizes } = await labels(['T-0403', 'T-0401', 'T-0406'])
    expect(sizes).toEqual([
      [62, 29],
      [62, 29],
      [62, 29],
    ])
    expect(pages.map((page) => tagsOn(page)[0])).toEqual(['T-0403', 'T-0401', 'T-0406'])
    const numbers = [jobs[1]?.number ?? '', jobs[0]?.number ?? '', jobs[2]?.number ?? '']
    expect(new Set(numbers).size).toBe(3)
    pages.forEach((page, place) => expect(page).toContain(numbers[place]))
  })

  it('on a sheet begin at the first free place', async () => {
    const [sheet, last] = [await labels(['T-0401', 'T-0403'], 1), await labels(['T-0401', 'T-0403'], 27)]
    expect([sheet.pages.length, last.pages.length]).toEqual([1, 2])
    expect(last.pages.map(tagsOn)).toEqual([['T-0401'], ['T-0403']])
    for (const first of [0, 28])
      expect((await refusalOf(printLabelsOfTags(counter, { first, tags: ['T-0401'] }, monday))).message).toContain(
        '1 to 27',
      )
  })

  it('are printed once for a head, however often and however it is asked for', async () => {
    const { pages } = await labels(['T-0401', '401', 't-0401', 'http://shop.test/t/T-0401', 'T-0402'])
    expect(pages.map((page) => tagsOn(page)[0])).toEqual(['T-0401', 'T-0402'])
  })

  it('bear the number worn now when an old one was asked for', async () => {
    expect((await labels(['T-0404', 'SPARE-9'])).pages.map((page) => tagsOn(page)[0])).toEqual(['SPARE-9'])
  })

  it('are refused by name for a tag nobody wore, for no tag at all, and for one that came off', async () => {
    const refused = (tags: readonly string[]) => refusalOf(printLabelsOfTags(counter, { first: 1, tags }, monday))
    const unknown = await refused(['T-0401', 'T-9999', 'no tag!'])
    expect([unknown.code, unknown.message]).toEqual([
      'not-found',
      'Tag not found: T-9999, no tag!. Check the number on the tag.',
    ])
    expect(await refused(['T-0405'])).toMatchObject({
      code: 'wrong-state',
      message: 'T-0405 was removed and the head has no tag. Assign a tag first.',
    })
    expect((await refused([])).code).toBe('invalid')
  })

  it('are for those who may print papers', async () => {
    expect((await refusalOf(printLabelsOfTags(nobody, { first: null, tags: ['T-0401'] }, monday))).code).toBe(
      'not-allowed',
    )
    expect((await refusalOf(seeLabelHeads(nobody, { tags: [] }, monday))).code).toBe('not-allowed')
    expect((await printLabelsOfTags(machinist, { first: null, tags: ['T-0401'] }, monday)).name).toBe('tag-labels.pdf')
  })

  it('are offered for what is here and wears a tag; one that left is asked for by its number', async () => {
    const view = await see()
    // All were tagged in the same minute but the one with a new number.
    expect(view.heads.map(({ tag }) => tag).toSorted()).toEqual(['SPARE-9', 'T-0401', 'T-0402', 'T-0403', 'T-0406'])
    expect(view.heads[0]?.tag).toBe('SPARE-9')
    expect([view.added, view.without, view.more]).toEqual([[], [], false])
    const asked = await see(['T-0401', 'T-0405', 'T-9999'])
    expect([asked.added, asked.asked]).toEqual([[], [{ number: 'T-0401', tag: 'T-0401' }]])
    expect((await see(['T-0404'])).asked).toEqual([{ number: 'T-0404', tag: 'SPARE-9' }])
    expect(asked.without).toEqual(['Tag not found: T-9999.', 'T-0405 was removed and the head has no tag.'])
  })

  it('a head tagged yesterday is not of today', async () => {
    const tomorrow = new Date(monday.getTime() + 24 * 3_600_000)
    expect((await see()).heads.every(({ today }) => today)).toBe(true)
    expect((await see([], tomorrow)).heads.some(({ today }) => today)).toBe(false)
  })
})

/** A sheet of paper, and where its labels of 62 × 29 mm begin: three abreast and nine rows in the middle of it. */
const sheets = [
  { paper: 'letter', leftMm: (215.9 - 186) / 2, topMm: (279.4 - 261) / 2 },
  { paper: 'a4', leftMm: (210 - 186) / 2, topMm: (297 - 261) / 2 },
]
const dpi = 300
const px = (mm: number) => Math.round((mm / 25.4) * dpi)

/** The label at a place of a sheet, 1 to 27, cut out of the picture of its page. */
function labelAt(page: Grey, place: number, { leftMm, topMm }: (typeof sheets)[number]): Grey {
  const [x, y] = [px(leftMm + ((place - 1) % 3) * 62), px(topMm + Math.floor((place - 1) / 3) * 29)]
  const [width, height] = [px(62), px(29)]
  const pixels = new Uint8Array(width * height)
  for (let row = 0; row < height; row++) {
    const from = (y + row) * page.width + x
    pixels.set(page.pixels.subarray(from, from + width), row * width)
  }
  return { width, height, pixels }
}

describe('many labels', () => {
  let shop: TestDatabase
  beforeAll(async () => {
    shop = await testDatabase()
    await openShop(shop)
    await book({ heads: [head()] })
  })

  it('sixty run on to three sheets of 27, and the list of them takes as many queries as of one', async () => {
    const few = (await selectsOf(() => see())).length
    for (let booked = 0; booked < 10; booked++) await book({ heads: [head(), head(), head(), head(), head(), head()] })
    expect((await selectsOf(() => see())).length).toBe(few)
    expect(few).toBeLessThanOrEqual(8)
    const tags = Array.from({ length: 60 }, (_, place) => tagOf(402 + place))
    expect((await see()).heads.map(({ tag }) => tag)).toEqual(expect.arrayContaining(tags))
    const { pages } = await labels(tags, 1)
    expect(pages.map((page) => tagsOn(page).length)).toEqual([27, 27, 6])
    expect(pages.flatMap(tagsOn)).toEqual(tags)
    // From the ninth place on, 19 fit on the first sheet.
    expect((await labels(tags, 9)).pages.map((page) => tagsOn(page).length)).toEqual([19, 27, 14])
  })

  it.each(sheets)('each at its place and with a code that reads at 300 dots an inch ($paper)', async (sheet) => {
    await shop.client.shop.updateMany({ data: { paper: sheet.paper } })
    const tags = Array.from({ length: 40 }, (_, place) => tagOf(402 + place))
    const paper = await printLabelsOfTags(counter, { first: 9, tags }, monday)
    const [first, second, ...more] = await greyPages(await paper.bytes(), dpi)
    const places = tags.map((tag, i) => ({ tag, page: i < 19 ? first : second, place: i < 19 ? 9 + i : i - 18 }))
    const read = places.map(({ page, place }) => page && decoded(labelAt(page, place, sheet)))
    expect(read).toEqual(tags.map((tag) => `http://shop.test/t/${tag}`))
    expect(more).toEqual([])
    // The eight places before the first free one, and those after the last, stay as they are.
    const bare = [labelAt(first!, 8, sheet), labelAt(second!, 25, sheet)]
    expect(bare.map((label) => decoded(label))).toEqual([null, null])
  })

  it('are listed a hundred to a page, each head on one of them, and one asked for besides', async () => {
    for (let booked = 0; booked < 15; booked++) await book({ heads: [head(), head(), head(), head(), head(), head()] })
    const first = await see(['T-0401'])
    expect([first.heads.length, first.more]).toEqual([100, true])
    expect(first.added.map(({ tag }) => tag)).toEqual(['T-0401'])
    const second = await see([], monday, 2)
    expect(second.more).toBe(false)
    const listed = [...first.heads, ...second.heads].map(({ tag }) => tag)
    expect(new Set(listed).size).toBe(listed.length)
    expect(second.heads.map(({ tag }) => tag)).toContain('T-0401')
  })
})
