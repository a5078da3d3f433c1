import fc from 'fast-check'
import { expect, it, vi } from 'vitest'
import '@/tests/setup/random'
import { seeBackRoom } from '@/lib/use-cases/back-room/see-back-room'
import { describeOnBoth, type TestDatabase } from '@/tests/setup/database'
import { book, openShop, owner } from '../jobs/counter-shop'

vi.setConfig({ testTimeout: 120_000 })

// The shop's March 2026 in Chicago: from 06:00 UTC on the 1st to 05:00 UTC on 1 April, when the clocks have gone forward.
const march = { from: Date.parse('2026-03-01T06:00:00Z'), to: Date.parse('2026-04-01T05:00:00Z') }
const asked = new Date('2026-04-01T04:00:00Z')
const inMarch = (ms: number): boolean => ms >= march.from && ms < march.to
const minuteMs = 60_000

/** Tenths of a cc, so that all sums are exact. */
const targetTenths = 640
const toleranceTenths = 5
const tenths = fc.constantFrom(630, 634, 635, 636, 640, 644, 645, 646, 650, null)
const point = fc.record({
  tenths,
  repeat: fc.constantFrom(null, null, 'again', 'far'),
  /** Null: it stands; else what it is put right to, or 'withdraw'. */
  right: fc.constantFrom(null, null, null, 'withdraw' as const, 640, 644, 650),
})
type Point = typeof point extends fc.Arbitrary<infer P> ? P : never
const head = fc.array(
  fc.record({
    chambers: fc.dictionary(fc.constantFrom('1', '2', '3'), point, { minKeys: 1, noNullPrototype: true }),
    /** Hours since the measuring before. */
    afterHours: fc.integer({ min: 1, max: 400 }),
  }),
  { minLength: 1, maxLength: 3 },
)

/** One row of a measuring, as the database has it. */
type Kept = {
  readonly id: string
  readonly setId: string
  readonly visitId: string
  readonly atMs: number
  readonly chamber: string
  readonly tenths: number | null
  readonly repeat: string | null
  readonly corrects: string | null
  readonly withdraws: boolean
}

/** The measurings of a head and the corrections of each, up to five days later. */
function rowsOf(
  visitId: string,
  place: number,
  goes: (typeof head extends fc.Arbitrary<infer H> ? H : never)[number][],
) {
  const rows: Kept[] = []
  let atMs = march.from - 6 * 24 * 60 * minuteMs + place * minuteMs
  for (const [go, { chambers, afterHours }] of goes.entries()) {
    atMs = Math.min(atMs + afterHours * 60 * minuteMs, march.to - (24 - go * 4) * 60 * minuteMs + place * minuteMs)
    const setId = `${visitId}-${go}`
    const own = { setId, visitId, atMs, corrects: null, withdraws: false }
    const put = Object.entries<Point>(chambers)
    rows.push(
      ...put.map(([chamber, { tenths, repeat }]) => ({ ...own, id: `${setId}-${chamber}`, chamber, tenths, repeat })),
    )
    for (const [chamber, { right }] of put) {
      if (right === null) continue
      const [corrects, later] = [`${setId}-${chamber}`, { setId: `${setId}-${chamber}-right`, visitId, repeat: null }]
      const figure = { tenths: right === 'withdraw' ? null : right, withdraws: right === 'withdraw' }
      rows.push({
        ...later,
        ...figure,
        id: `${corrects}-put`,
        chamber,
        corrects,
        atMs: Math.min(atMs + 120 * 60 * minuteMs, march.to - minuteMs),
      })
    }
  }
  return rows
}

/** What the list is to say, worked out reading by reading in whole tenths. */
function missedIn(rows: readonly Kept[]): { id: string; setMs: number }[] {
  const missed: { id: string; setMs: number }[] = []
  for (const place of new Set(rows.map(({ visitId, chamber }) => `${visitId} ${chamber}`))) {
    const here = rows.filter(({ visitId, chamber }) => `${visitId} ${chamber}` === place)
    const standing = here.flatMap((first) => {
      if (first.corrects !== null) return []
      const now = here.find(({ corrects }) => corrects === first.id) ?? first
      return now.withdraws ? [] : [{ id: now.id, tenths: now.tenths, repeat: first.repeat, first, now }]
    })
    const last = standing.at(-1)
    if (!last || last.tenths === null) continue
    const read = standing.filter(({ tenths }) => tenths !== null)
    let from = read.length - 1
    while (from > 0 && read[from]?.repeat !== null) from -= 1
    const repeats = read.slice(from)
    const sum = repeats.reduce((all, one) => all + (one.tenths ?? 0), 0)
    const isOut = Math.abs(sum - repeats.length * targetTenths) > repeats.length * toleranceTenths
    if (isOut && inMarch(last.first.atMs)) missed.push({ id: last.id, setMs: last.now.atMs })
  }
  return missed
}

const count = 120
const at = (ms: number): Date => new Date(ms)

/** Heads with measurings, waivers and holds, most of them in March. */
async function fill({ client }: TestDatabase) {
  const { heads } = await book({ targetCc: '64' })
  const mould = await client.visit.findUniqueOrThrow({ where: { id: heads[0]?.visitId ?? '' } })
  const headMould = await client.head.findUniqueOrThrow({ where: { id: mould.headId } })
  const names = Array.from({ length: count }, (_, place) => `x-${String(place).padStart(3, '0')}`)
  await client.head.createMany({ data: names.map((id) => ({ ...headMould, id })) })
  await client.visit.createMany({ data: names.map((id) => ({ ...mould, id, headId: id })) })
  const goes = fc.sample(head, count)
  const rows = names.flatMap((name, place) => rowsOf(name, place, goes[place] ?? []))
  const sets = [...new Map(rows.map((row) => [row.setId, row])).values()].toSorted((a, b) => a.atMs - b.atMs)
  await client.readingSet.createMany({
    data: sets.map(({ setId: id, visitId, atMs }, place) => ({
      ...{ id, visitId, stepId: 'finished', occurrence: '', eventSeq: 900_000 + place, conditions: '{}' },
      ...{ takenAt: at(atMs), recordedAt: at(atMs), byId: owner.personId },
    })),
  })
  await client.reading.createMany({
    data: rows.map(({ id, setId, chamber, tenths: read, repeat, corrects: correctsId, withdraws }) => ({
      ...{ id, setId, kind: 'cc', point: chamber, unit: 'cc', repeat, correctsId },
      ...{ value: read === null ? null : read / 10, text: read === null ? '' : (read / 10).toFixed(1) },
      ...{ correction: correctsId === null ? null : withdraws ? 'withdraw' : 'replace', reason: '' },
    })),
  })
  const dayMs = 24 * 60 * minuteMs
  const moments = names.map((id, place) => ({ id, visitId: id, at: at(march.from + ((place * 37) % 34) * dayMs - 1) }))
  await client.waiver.createMany({
    data: moments.map((row) => ({
      ...row,
      ...{ stepId: 'final', occurrence: '', gap: 'cc', what: 'cc', reason: row.id, touchesCustomer: false },
      byId: owner.personId,
    })),
  })
  await client.hold.createMany({
    data: moments.map(({ at: openedAt, ...row }, place) => ({
      ...row,
      ...{ reason: row.id, openedAt, openedById: owner.personId, decisionNote: '', customerYes: '' },
      decidedAt: place % 9 === 0 ? asked : null,
    })),
  })
  return { rows, moments }
}

type Seen = Awaited<ReturnType<typeof seeBackRoom>>

async function allPages(): Promise<Seen[]> {
  const pages: Seen[] = []
  do pages.push(await seeBackRoom(owner, asked, pages.length + 1))
  while (pages.at(-1)?.more && pages.length < 20)
  return pages
}

describeOnBoth('the lists of the Back room', (open) => {
  it('say over their pages what the rows say one by one, each once, newest first', async () => {
    const database = await open()
    await openShop(database)
    const { rows, moments } = await fill(database)
    const pages = await allPages()
    expect(pages.length).toBeGreaterThan(3)

    const expected = missedIn(rows)
    const setMs = new Map(expected.map((line) => [line.id, line.setMs]))
    const lines = pages.flatMap(({ outOfTolerance }) => outOfTolerance.map(({ id }) => id))
    expect(expected.length).toBeGreaterThan(50)
    expect(lines.toSorted()).toEqual(expected.map(({ id }) => id).toSorted())
    const times = lines.map((id) => setMs.get(id) ?? 0)
    expect(times).toEqual(times.toSorted((a, b) => b - a))
    expect(Math.max(...pages.map(({ outOfTolerance }) => outOfTolerance.length))).toBeLessThanOrEqual(25 * 3)

    const waived = moments.filter((row) => inMarch(row.at.getTime()))
    const byTime = (a: (typeof moments)[number], b: (typeof moments)[number]) =>
      a.at.getTime() - b.at.getTime() || (a.id < b.id ? -1 : 1)
    expect(waived.length).toBeGreaterThan(100)
    expect(pages.flatMap(({ waivers }) => waivers.map(({ id }) => id))).toEqual(
      waived
        .toSorted(byTime)
        .reverse()
        .map(({ id }) => id),
    )
    expect(pages.flatMap(({ holds }) => holds.map(({ holdId }) => holdId))).toEqual(
      moments
        .filter((_, place) => place % 9 !== 0)
        .toSorted(byTime)
        .map(({ id }) => id),
    )
    expect(pages[0]?.holds).toHaveLength(100)
    expect(pages[0]?.waivers[0]).toMatchObject({ by: owner.name })

    const steps = await database.client.routeStep.findMany()
    for (const { station, ready, started } of pages[0]?.loads ?? []) {
      const here = steps.filter((step) => step.station === station)
      const inQueue = (queue: string): number => here.filter((step) => step.queue === queue).length
      expect([station, ready, started]).toEqual([station, inQueue('ready'), inQueue('started')])
    }
  })
})
