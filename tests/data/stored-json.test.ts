import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { estimateAnswer } from '@/lib/data/stored/estimate'
import { storedHeldAgainst } from '@/lib/data/stored/held-against'
import { moneyFacts } from '@/lib/data/stored/money-facts'
import { planInputs, planRecordOf, planResults } from '@/lib/data/stored/plan'
import {
  auditChanges,
  mergedJobs,
  operationResult,
  readingConditions,
  returnedNotDone,
} from '@/lib/data/stored/records'
import { stepDetail } from '@/lib/data/stored/route-step'
import { settingsValues } from '@/lib/data/stored/settings'
import { releaseFacts } from '@/lib/data/stored/spec-sheet'
import type { StoredJson } from '@/lib/data/stored/stored-json'
import { wantedOnCasting, wantedOnJob, wantedOnVisit } from '@/lib/data/stored/wanted'
import { currentSettings } from '@/lib/data/settings'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { write } from '@/lib/data/write'
import { demoStaff } from '@/lib/demo/shop'
import { mergeCustomersSchema } from '@/lib/schemas/customer'
import { changeCastingWantedSchema, changeHeadWantedSchema } from '@/lib/schemas/wanted'
import { changeCastingWanted } from '@/lib/use-cases/castings/change-casting-wanted'
import { mergeCustomers } from '@/lib/use-cases/customers/merge-customers'
import { changeHeadWanted } from '@/lib/use-cases/jobs/change-head-wanted'
import { estimateQuestion } from '@/lib/use-cases/cut-bench/estimate-question'
import type { TestDatabase } from '../setup/database'
import { demoMoment, filledDemo } from '../setup/demo-shop'
import { cutCautionText } from '@/lib/words/cut-cautions'

type Column = {
  readonly key: string
  readonly shape: number
  /** JSON that does not belong there. */
  readonly wrong: unknown
  readonly read: (text: string, id: string) => unknown
  /** Read and written again. */
  readonly again: (text: string, id: string) => string
}

const column = <T>(
  { read, write }: StoredJson<T>,
  { key = 'id', shape = 1, wrong = { value: 7 } }: Partial<Column> = {},
): Column => ({
  key,
  shape,
  wrong,
  read,
  again: (text, id) => write(read(text, id)),
})

const columns: Readonly<Record<string, Column>> = {
  'PlanVersion.results': column(planResults, { shape: 2 }),
  'PlanVersion.inputs': column(planInputs, { wrong: { choice: 7 } }),
  'Settings.values': column(settingsValues, { key: 'version', wrong: { turnaroundDays: '6' } }),
  'Release.facts': column(releaseFacts),
  'ReadingSet.conditions': column(readingConditions),
  'Reading.heldAgainst': column(storedHeldAgainst),
  'RouteStep.detail': column(stepDetail, { key: 'visitId', shape: 3 }),
  'Estimate.question': column(estimateQuestion),
  'Estimate.answer': column(estimateAnswer, { shape: 2 }),
  'CustomerMerge.jobIds': column(mergedJobs),
  'ReturnedAsIs.notDone': column(returnedNotDone, { key: 'visitId' }),
  'AuditEntry.changes': column(auditChanges, { key: 'seq' }),
  'Operation.result': column(operationResult),
  'MoneyPaper.facts': column(moneyFacts, { shape: 2 }),
  'Job.wanted': column(wantedOnJob),
  'Visit.wanted': column(wantedOnVisit),
  'CastingRecord.wanted': column(wantedOnCasting),
}

let shop: TestDatabase
beforeAll(async () => {
  shop = await filledDemo()
  // The demo's deeds have no operation.
  const moment = { now: demoMoment, op: { id: 'op-1', hash: 'hash' } }
  await write((await demoStaff()).orla, moment, async (ctx) =>
    addSettingsVersion(
      ctx,
      (await currentSettings(ctx.tx)).version,
      'trial',
      (before) => ({ ...before, turnaroundDays: 6 }),
      'settings.change',
    ),
  )
  await saySomethingWanted()
  await mergeTwo()
}, 300_000)

/** The demo's jobs say what is wanted; here one head and one casting record say it too. */
async function saySomethingWanted(): Promise<void> {
  const { orla } = await demoStaff()
  const wanted = { intakeSeatWidthIn: '0.060' }
  const visit = await shop.client.visit.findFirstOrThrow({ where: { releases: { none: {} }, scrappedAt: null } })
  const head = { visitId: visit.id, version: visit.version, wanted }
  await changeHeadWanted(orla, changeHeadWantedSchema.parse(head), { now: demoMoment })
  const casting = await shop.client.castingRecord.findFirstOrThrow()
  const record = { castingId: casting.id, version: casting.version, wanted }
  await changeCastingWanted(orla, changeCastingWantedSchema.parse(record), { now: demoMoment })
}

async function mergeTwo(): Promise<void> {
  const { orla } = await demoStaff()
  const [from, into] = await shop.client.customer.findMany({ where: { jobs: { some: {} } }, take: 2 })
  const ends = { fromId: from?.id, fromVersion: from?.version, intoId: into?.id, intoVersion: into?.version }
  await mergeCustomers(orla, mergeCustomersSchema.parse({ ...ends, reason: 'trial' }), { now: demoMoment })
}

async function kept(name: string, key: string): Promise<{ id: string; text: string }[]> {
  const [table, column] = name.split('.')
  return shop.client.$queryRawUnsafe(
    `SELECT CAST("${key}" AS TEXT) AS id, "${column}" AS text FROM "${table}" WHERE "${column}" <> ''`,
  )
}

/** As it was written before there were shapes. */
function withoutShape(text: string): string {
  const { shape, ...rest } = JSON.parse(text) as { shape: number; value?: unknown }
  expect(shape).toBe(1)
  return JSON.stringify('value' in rest ? rest.value : rest)
}

it('every column of the model that holds JSON has its reader', () => {
  const model = readFileSync(join(process.cwd(), 'prisma', 'schema.prisma'), 'utf8')
  const found = [...model.matchAll(/^model (\w+) \{(.*?)^\}/gms)].flatMap(([, table, body]) =>
    [...(body ?? '').matchAll(/\/\/\/ [^\n]*JSON[^\n]*\n\s+(\w+)/g)].map(([, column]) => `${table}.${column}`),
  )
  expect(found.sort()).toEqual(Object.keys(columns).sort())
})

describe.each(Object.entries(columns))('%s', (name, { key, shape, wrong, read, again }) => {
  it('of every row of the demo is read, and says all that was written', async () => {
    const rows = await kept(name, key)
    expect(rows.length).toBeGreaterThan(0)
    for (const { id, text } of rows) {
      expect(JSON.parse(text), id).toHaveProperty('shape', shape)
      expect(JSON.parse(again(text, id)), id).toEqual(JSON.parse(text))
    }
  })

  it('is refused with the name of the row when it is broken', async () => {
    const [row] = await kept(name, key)
    const text = row?.text ?? ''
    const broken = [
      text.slice(0, -1),
      text.replace(`"shape":${shape}`, '"shape":99'),
      ...(name === 'Operation.result' ? [] : [JSON.stringify({ shape, ...(wrong as object) }), '7', '"words"']),
    ]
    for (const bad of broken) {
      expect(() => read(bad, 'row-7'), bad.slice(0, 60)).toThrow(`${name} of row row-7 cannot be read: `)
    }
  })
})

/** The spec sheet had its shape from the first day; what a later shape replaced was written otherwise. */
const shapeless = Object.entries(columns).filter(([name, { shape }]) => shape === 1 && name !== 'Release.facts')

it.each(shapeless)('%s is read the same as it was written before it had a shape', async (name, { key, read }) => {
  for (const { id, text } of (await kept(name, key)).slice(0, 200)) {
    expect(read(withoutShape(text), id)).toEqual(read(text, id))
  }
})

it('cautions of a plan that was kept before they had codes stay as they were said', async () => {
  const plan = await shop.client.planVersion.findFirstOrThrow()
  const said = ['Stop: the deck has already cut through the sealing line of the exhaust seat.']
  const before = JSON.stringify({ ...(JSON.parse(plan.results) as object), shape: 1, cautions: said })
  expect(planRecordOf({ ...plan, results: before }).cautions.map(cutCautionText)).toEqual(said)
})

it('a plan that lost one figure is refused and says which', async () => {
  const plan = await shop.client.planVersion.findFirstOrThrow()
  const { flatIn: _, ...rest } = JSON.parse(plan.results) as Record<string, unknown>
  expect(() => planRecordOf({ ...plan, results: JSON.stringify(rest) })).toThrow(
    new RegExp(`^PlanVersion.results of row ${plan.id} cannot be read: flatIn: `),
  )
})
