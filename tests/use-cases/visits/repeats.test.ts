import { beforeAll, describe, expect, it, vi } from 'vitest'
import { lastSeq } from '@/lib/dossier/find-step'
import { loadDossier } from '@/lib/dossier/dossier'
import { nextPassAtMill } from '@/lib/dossier/next-pass'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { ruleOnCut } from '@/lib/use-cases/castings/rule-on-cut'
import { seeRates } from '@/lib/use-cases/castings/see-rates'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { undoTick } from '@/lib/use-cases/visits/undo-tick'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, casting, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { makeFlatPlan, shopWithJob, workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

const chambers = { stepId: 'chambers', occurrence: '', orderId: null } as const
const flatCut = { ...chambers, stepId: 'flat-cut' } as const
type Key = typeof chambers | typeof flatCut
const visitOf = (job: BookedJob, place: 0 | 1): string => job.heads[place]?.visitId ?? ''

let database: TestDatabase
let job: BookedJob
let visitId: string

const dossier = () => loadDossier(database.client, visitId)
async function read(
  step: Key,
  readings: readonly { kind: 'cc' | 'cut-depth'; point: string; text: string; repeat?: string; again?: string }[],
) {
  const { visit } = await dossier()
  const entry = {
    readings: readings.map((one) => ({ ...one, notTaken: null })),
    instrumentId: null,
    conditions: {},
    takenAt: null,
  }
  return recordReadings(machinist, { visitId, step, seen: lastSeq(visit, step), entry }, at(monday))
}
const cc = (point: string, text: string, repeat?: string) => ({
  kind: 'cc' as const,
  point,
  text,
  ...(repeat ? { repeat } : {}),
})
const shown = async (point: string) =>
  (await seeStep(machinist, visitId, chambers, monday)).fields.find(
    (field) => field.kind === 'cc' && field.point === point,
  )
const counted = async (point: string) =>
  (await dossier()).newest.find((one) => one.kind === 'cc' && one.step.stepId === 'chambers' && one.point === point)

beforeAll(async () => {
  database = await testDatabase()
  job = await shopWithJob(database, ['flat-cut'])
  visitId = visitOf(job, 0)
  await workThrough(visitId, ['flat-cut'])
  await undoTick(
    machinist,
    { visitId, step: chambers, seen: lastSeq((await dossier()).visit, chambers), reason: '' },
    at(monday),
  )
})

describe('a chamber that has a value is read anew, after a tick was taken back', () => {
  it('asks: again, or instead of; nothing is kept until it is said', async () => {
    const refusal = await refusalOf(read(chambers, [cc('1', '64.4')]))
    expect(refusal.code).toBe('ambiguous')
    expect(refusal.fields?.['cc|1']).toBe('chamber 1 reads 64.2. Choose: again, or instead of.')
    expect((await counted('1'))?.value).toBe(64.2)
  })

  it('again: averaged, everywhere the same', async () => {
    await read(chambers, [cc('1', '64.4', 'again')])
    expect((await counted('1'))?.value).toBeCloseTo(64.3, 9)
    const field = await shown('1')
    expect(field?.repeats?.words).toBe('64.2, 64.4: mean 64.3, spread 0.2, 2 readings')
    expect(field?.answer).toBe('64.3')
    expect((await dossier()).facts.readings.find((one) => one.point === '1' && one.kind === 'cc')?.value).toBeCloseTo(
      64.3,
      9,
    )
  })

  it('a wild one is asked about, and kept with its mark', async () => {
    // Two stand, 64.3 between them: 3·0.3·√1.5 = 1.10.
    const refusal = await refusalOf(read(chambers, [cc('1', '62.9')]))
    expect(refusal.message).toContain('It is 1.4 cc off, more than 1.1 cc')
    await read(chambers, [cc('1', '62.9', 'again')])
    expect((await shown('1'))?.repeats?.words).toContain('62.9 (far off, kept)')
    // (64.2 + 64.4 + 62.9)/3
    expect((await counted('1'))?.value).toBeCloseTo(63.8333, 3)
  })

  it('instead of: a correction of that reading, with its reason; the rest stands', async () => {
    const wild = (await shown('1'))?.repeats?.values.at(-1)
    await read(chambers, [cc('1', '64.3', wild?.id)])
    expect((await shown('1'))?.repeats?.words).toBe('64.2, 64.4, 64.3: mean 64.3, spread 0.2, 3 readings')
    const corrected = (await dossier()).readings.find((one) => one.text === '64.3')
    expect(corrected?.correctionReason).toBe('Read anew, in the place of this reading')
  })

  it('teaches the shop how its readings scatter, and the total follows', async () => {
    // 64.2 is another person's; 64.4 and 64.3 are one person's: 2·0.05² = 0.005, one degree of freedom.
    const total = await database.client.ccRepeatTotal.findFirstOrThrow()
    expect(total.degrees).toBe(1)
    expect(total.squaresCc2).toBeCloseTo(0.005, 9)
    const { ownRepeats, otherRepeats } = await dossier()
    expect(ownRepeats.map(({ tally }) => tally.degrees)).toEqual([1])
    expect(otherRepeats.degrees).toBe(0)
  })
})

describe('a cut that disagrees with the record', () => {
  beforeAll(async () => {
    await workThrough(visitId, ['flat-cut'])
    await makeFlatPlan(job)
  })
  const card = async () => {
    const mill = await dossier()
    if (!mill.plan) throw new Error('It has a plan.')
    return nextPassAtMill(database.client, mill, mill.plan)
  }

  it('at the mill: read the chamber again, and no further pass until it is answered', async () => {
    await read(flatCut, [{ kind: 'cut-depth', point: '', text: '9 thou' }])
    expect((await card()).headline).toBe('cc chamber 1 now.')
    // Nine thou should take 1.5 cc; 9 cc of it is no reading of this head.
    // It is unlikely, and kept since it is typed twice.
    await read(flatCut, [{ ...cc('at-stop', '55.3'), again: '55.3' }])
    expect(await card()).toMatchObject({ verdict: 'stop', stopAtThou: null, headline: 'Read the chamber again.' })
    // Read again and put in its place: the card goes on.
    const [wrong] = (await seeStep(machinist, visitId, flatCut, monday)).fields.flatMap(
      (field) => (field.point === 'at-stop' ? field.repeats?.values : []) ?? [],
    )
    await read(flatCut, [cc('at-stop', '62.8', wrong?.id)])
    // A tolerance of half a cc asks for more than one reading; then it goes on.
    expect(await card()).toMatchObject({ verdict: 'read', readNext: 'at-stop-2' })
    await read(flatCut, [cc('at-stop-2', '62.3'), cc('at-stop-3', '62.6')])
    expect(await card()).toMatchObject({ verdict: 'cut' })
  })

  it('the owner counts it or leaves it out, with a reason, on record', async () => {
    await workThrough(visitId, ['final'])
    const cutNow = async () => (await seeRates(owner, casting))[0]?.cuts[0]
    expect(await cutNow()).toMatchObject({ verdict: 'counted', ruling: null })
    const leave = { visitId, ruling: 'leave-out' as const, reason: 'burette was leaking' }
    expect((await refusalOf(ruleOnCut(machinist, leave, at(monday)))).code).toBe('not-allowed')
    await ruleOnCut(owner, leave, at(monday))
    expect(await cutNow()).toMatchObject({
      verdict: 'left-out',
      whyNot: 'left out by the owner: burette was leaking',
    })
    const { headId } = (await dossier()).visit
    expect((await seeHead(owner, headId)).visits[0]?.cut?.words).toContain('burette was leaking')
    await ruleOnCut(owner, { ...leave, ruling: 'count', reason: 'read again, it was right' }, at(monday))
    expect(await cutNow()).toMatchObject({ verdict: 'counted', ruling: 'count' })
    const trail = await database.client.auditEntry.findMany({ where: { subject: 'shop-cut' }, orderBy: { seq: 'asc' } })
    expect(trail.map(({ action, subjectId }) => [action, subjectId])).toEqual([
      ['shop-cut.leave-out', visitId],
      ['shop-cut.count', visitId],
    ])
  })
})
