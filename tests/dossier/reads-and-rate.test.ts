import { beforeAll, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import { db } from '@/lib/data/db'
import { loadDossier } from '@/lib/dossier/dossier'
import { expectedFacts } from '@/lib/dossier/expected-facts'
import { findStep } from '@/lib/dossier/find-step'
import { recordReadingsSchema } from '@/lib/schemas/visit'
import { jobSteps } from '@/lib/use-cases/papers/job-steps'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { testDatabase } from '@/tests/setup/database'
import { at, machinist, monday } from '../use-cases/jobs/counter-shop'
import { makeFlatPlan, shopWithJob, workThrough } from '../use-cases/release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 120_000 })

let visitId = ''
const head = async () => loadDossier(await db(), visitId)
const read = (typed: Readonly<Record<string, string>>) =>
  recordReadings(
    machinist,
    recordReadingsSchema.parse({
      visitId,
      step: keyOf('flat-cut'),
      seen: 99_999,
      entry: {
        readings: Object.entries(typed).map(([key, text]) => ({
          kind: key.split('|')[0],
          point: key.split('|')[1],
          text,
          notTaken: null,
        })),
        instrumentId: null,
        conditions: {},
        takenAt: null,
      },
    }),
    at(monday),
  )
const rate = async () => {
  const dossier = await head()
  const facts = await expectedFacts(await db(), dossier, findStep(dossier.route, keyOf('flat-cut')), [], {})
  return facts.chamber.rate
}
const ccBlanks = async (toleranceCc: number) => {
  const dossier = await head()
  const steps = jobSteps({ ...dossier, settings: { ...dossier.settings, ccToleranceCc: toleranceCc } }, true, null)
  const owed = steps.flatMap(({ owes }) => owes).find(({ unit }) => unit === 'cc')
  return owed?.points.map(({ label, value }) => [label, value])
}

beforeAll(async () => {
  const job = await shopWithJob(await testDatabase(), ['flat-cut'])
  visitId = job.heads[0]?.visitId ?? ''
  await workThrough(visitId, ['chambers'])
  expect(await ccBlanks(0.5)).toEqual([
    ['1', null],
    ['2', null],
    ['3', null],
    ['4', null],
  ])
  // Four chambers, 0.3 cc a reading, division 0.2, ± 0.25: 0.09/(4·0.01 − 0.00333) = 2.45, so three of each.
  const thrice = ['1', '2', '3', '4'].flatMap((name) => [
    [name, null],
    ['', null],
    ['', null],
  ])
  expect(await ccBlanks(0.25)).toEqual(thrice)
  await workThrough(visitId, ['flat-cut'])
  await makeFlatPlan(job)
})

it('what was read stands on the sheet, without a blank once the step is done', async () => {
  expect(await ccBlanks(0.25)).toEqual([
    ['1', '64.2'],
    ['2', '63.8'],
    ['3', '64.1'],
    ['4', '63.9'],
  ])
})

it('a chamber after a cut is held against this head’s own rate once it has one', async () => {
  // Before: the record's 6 thou a cc, and 3 % between heads.
  expect(await rate()).toMatchObject({ ccPerThou: 1 / 6, betweenHeadPart: 0.03 })
  // 64.2 less 62.2 is 2.0 over 9 thou, where 1.5 was believed: the head's own rate lies between 1/6 and 2/9.
  await read({ 'cut-depth|': '9 thou', 'cc|at-stop': '62.2' })
  const own = await rate()
  expect(own).toMatchObject({ betweenHeadPart: 0, priorCcPerThou: 1 / 6 })
  expect(own?.ccPerThou).toBeGreaterThan(1 / 6)
  expect(own?.ccPerThou).toBeLessThan(2 / 9)
  // The mill goes on: until the chamber is read again the head's own rate is what it was.
  await read({ 'cut-depth|': '12 thou' })
  expect(await rate()).toEqual(own)
})
