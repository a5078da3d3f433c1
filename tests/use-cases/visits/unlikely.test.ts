import { beforeAll, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import { storedHeldAgainst } from '@/lib/data/stored/held-against'
import { correctReadingSchema, recordReadingsSchema, tickStepSchema } from '@/lib/schemas/visit'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { shopWithJob } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase
let visitId = ''
let headId = ''

type Typed = { readonly text: string; readonly again?: string }
const entryOf = (typed: Readonly<Record<string, string | Typed>>) => ({
  readings: Object.entries(typed).map(([key, given]) => {
    const [kind, point] = key.split('|')
    return { kind, point, notTaken: null, ...(typeof given === 'string' ? { text: given } : given) }
  }),
  instrumentId: null,
  conditions: {},
  takenAt: null,
})
const record = (stepId: 'chambers' | 'heights', typed: Readonly<Record<string, string | Typed>>) =>
  recordReadings(
    machinist,
    recordReadingsSchema.parse({ visitId, step: keyOf(stepId), seen: 99_999, entry: entryOf(typed) }),
    at(monday),
  )
const keptAt = (stepId: string) =>
  database.client.reading.findMany({ where: { set: { visitId, stepId } }, orderBy: { id: 'asc' } })

beforeAll(async () => {
  database = await testDatabase()
  const job = await shopWithJob(database)
  visitId = job.heads[0]?.visitId ?? ''
  headId = (await database.client.visit.findUniqueOrThrow({ where: { id: visitId } })).headId
})

const chambers = { 'cc|1': '64.0', 'cc|2': '6.39', 'cc|3': '64.2', 'cc|4': '64.0' }
const rest = { 'valves-used|': 'shop', 'plug-used|': 'shop' }

it('an unlikely figure is refused at its cell, with all that was typed beside it, saved or ticked', async () => {
  const refused = await refusalOf(record('chambers', chambers))
  expect(refused.code).toBe('unlikely')
  expect(Object.keys(refused.fields ?? {})).toEqual(['cc|2'])
  expect(refused.fields?.['cc|2']).toBe(
    '6.4 cc is unlikely: 62.5 to 65.5 cc expected, by the other chambers. Type it again to keep it.',
  )
  const entry = entryOf({ ...chambers, ...rest })
  const tick = tickStepSchema.parse({ visitId, step: keyOf('chambers'), seen: 99_999, entry })
  expect((await refusalOf(tickStep(machinist, tick, at(monday)))).code).toBe('unlikely')
  expect(await keptAt('chambers')).toEqual([])
})

it('another figure the second time, or none, confirms nothing', async () => {
  for (const again of ['', '63.9', '6.93', '6.39 in³', 'yes']) {
    const refused = await refusalOf(record('chambers', { ...chambers, 'cc|2': { text: '6.39', again } }))
    expect(refused.code).toBe('unlikely')
  }
  expect(await keptAt('chambers')).toEqual([])
})

it('the same figure typed again is kept, with what it was held against', async () => {
  await record('chambers', {
    ...chambers,
    'cc|2': { text: '6.39', again: '6.390' },
    'cc|1': { text: '64.0', again: '64.0' },
  })
  const kept = await keptAt('chambers')
  expect(kept.map(({ point, confirmed }) => [point, confirmed])).toEqual([
    ['1', false],
    ['2', true],
    ['3', false],
    ['4', false],
  ])
  const [odd] = kept.filter(({ confirmed }) => confirmed)
  // Median of 64.0, 64.2, 64.0 and 1.5 either way.
  expect(storedHeldAgainst.read(odd?.heldAgainst ?? '', 'test')).toMatchObject({
    expected: 64,
    low: 62.5,
    high: 65.5,
    why: { code: 'other-chambers' },
    oneOf: [],
  })
  expect(kept.filter(({ heldAgainst }) => heldAgainst !== null)).toHaveLength(1)
})

it('stands as confirmed on the head’s page, and in the trail', async () => {
  const head = await seeHead(owner, headId)
  const lines = head.visits.flatMap(({ readings }) => readings)
  expect(lines.filter(({ confirmed }) => confirmed !== '').map(({ point, confirmed }) => [point, confirmed])).toEqual([
    ['chamber 2', 'confirmed; 62.5 to 65.5 cc expected, by the other chambers'],
  ])
  const entries = await database.client.auditEntry.findMany({ where: { visitId, action: 'reading-set.read' } })
  expect(entries.at(-1)?.changes).toContain('"confirmed":["cc|2"]')
})

it('a correction is held against the same, and what it corrects is no evidence for it', async () => {
  const [, odd] = await keptAt('chambers')
  const input = { visitId, readingId: odd?.id, correction: 'replace', reason: 'The point was in the wrong place.' }
  const correct = (more: object) => correctReading(owner, correctReadingSchema.parse({ ...input, ...more }), at(monday))
  const refused = await refusalOf(correct({ text: '93.6' }))
  expect(refused).toMatchObject({ code: 'unlikely', fields: { text: expect.stringContaining('93.6 cc is unlikely') } })
  await correct({ text: '63.9' })
  const kept = await keptAt('chambers')
  expect(kept.at(-1)).toMatchObject({ text: '63.9', confirmed: false, heldAgainst: null })
})

it('readings that cannot all be true are a stop, however often they are typed', async () => {
  await database.client.orderedLine.create({
    data: {
      id: crypto.randomUUID(),
      visitId,
      work: 'springs',
      note: '',
      findingId: null,
      createdAt: monday,
      endedAt: null,
    },
  })
  const typed = {
    'installed-height|intake': { text: '1.050', again: '1.050' },
    'coil-bind|intake': { text: '1.060', again: '1.060' },
  }
  const refused = await refusalOf(record('heights', typed))
  expect(refused.code).toBe('impossible')
  expect(Object.keys(refused.fields ?? {})).toEqual(['installed-height|intake', 'coil-bind|intake'])
  expect(refused.message).toMatch(/too little for any lift .*Check and fix it, or put the head on hold\.$/)
  expect(await keptAt('heights')).toEqual([])
})
