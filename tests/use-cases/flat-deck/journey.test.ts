import { beforeEach, describe, expect, test } from 'vitest'
import { oneHand, driveThrough, driveTo, tick, type Readings } from '@/lib/demo/drive/drive'
import { keyOf, type StepRef } from '@/lib/core/route/keys'
import { db } from '@/lib/data/db'
import { loadDossier } from '@/lib/dossier/dossier'
import { addCastingSchema, type CastingForm } from '@/lib/schemas/casting'
import { emptyWanted } from '@/lib/schemas/wanted'
import { planChoiceSchema } from '@/lib/schemas/plan'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { seeCasting } from '@/lib/use-cases/castings/see-castings'
import { makePlanVersion } from '@/lib/use-cases/plans/make-plan-version'
import { seePlan } from '@/lib/use-cases/plans/see-plan'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { testDatabase } from '@/tests/setup/database'
import { at, book, head, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'
import { cutCautionText } from '@/lib/words/cut-cautions'

const name = 'Ferrow D2'
const record: CastingForm = {
  name,
  material: 'cast iron',
  chamberCount: '2',
  chamberShape: 'flat-deck',
  deepEdge: 'exhaust',
  note: '',
  figures: {
    any: {
      milledWidthIn: '7.000',
      deckLengthIn: '12.000',
      cornerInsetEdgeIn: '0',
      cornerInsetEndIn: '0',
      thicknessNewIn: '4.1400',
      thicknessLeastIn: '4.1000',
      intakeValves: '2',
      exhaustValves: '1',
      intakeValveIn: '1.500',
      exhaustValveIn: '1.600',
      intakeValveAngleDeg: '0',
      exhaustValveAngleDeg: '0',
      intakeRecessionLeastIn: '.024',
      intakeRecessionMostIn: '.055',
      exhaustRecessionLeastIn: '.030',
      exhaustRecessionMostIn: '.060',
      injectorProtrusionLeastIn: '.050',
      injectorProtrusionMostIn: '.090',
    },
    'as-cast': { nominalCc: '40.0' },
    machined: {},
    opened: {},
  },
  bolts: [],
  variants: [],
}

const before: Readings = {
  recession: {
    '1-intake': '.040',
    '1-intake-2': '.041',
    '1-exhaust': '.046',
    '2-intake': '.042',
    '2-intake-2': '.040',
    '2-exhaust': '.045',
  },
  protrusion: { '1': '.060', '2': '.062' },
}
/** Four corners, the thinnest 4.1320. */
const corners: Readings = {
  thickness: { 'intake-1': '4.1320', 'exhaust-1': '4.1322', 'intake-2': '4.1321', 'exhaust-2': '4.1323' },
  straightness: { across: '.0015', along: '.001' },
  'removed-before': '.008',
}
/** Twelve thou less at each place. */
const after: Readings = {
  recession: {
    '1-intake': '.028',
    '1-intake-2': '.029',
    '1-exhaust': '.034',
    '2-intake': '.030',
    '2-intake-2': '.028',
    '2-exhaust': '.033',
  },
}
const finished: Readings = {
  thickness: { 'intake-1': '4.1200', 'exhaust-1': '4.1202', 'intake-2': '4.1201', 'exhaust-2': '4.1203' },
  straightness: { across: '.0005', along: '.0005' },
  protrusion: { '1': '.072', '2': '.074' },
}

let castingId: string
let visitId: string
let pairId: string
const hands = oneHand(owner, monday)
const through = (ref: StepRef, more: Partial<Record<StepRef, Readings>> = {}) =>
  driveThrough(hands, visitId, ref, { thickness: corners, 'seat-before': before, ...more })
const plan = (choice: object) =>
  makePlanVersion(
    owner,
    planChoiceSchema.parse({
      ...{ pairId, seenVersion: 0, kind: 'flat', splitBy: 'margin', flatIn: '', angleIn: '', angleDeg: '' },
      ...{ stopAtIn: '', sinkIn: '', reason: '' },
      ...choice,
    }),
    at(monday),
  )
const dossier = async () => loadDossier(await db(), visitId)

beforeEach(async () => {
  process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
  await openShop(await testDatabase())
  castingId = (await addCasting(owner, addCastingSchema.parse(record), at(monday))).castingId
  const job = await book({
    heads: [head({ castingId, presentCc: '40' })],
    targetCc: '38',
    ordered: [{ work: 'flat-cut', note: '' }],
    wanted: { ...emptyWanted(), finishedThicknessIn: '4.1200' },
  })
  const [booked] = job.heads
  if (!booked) throw new Error('not booked')
  visitId = booked.visitId
  pairId = booked.pairId
})

describe('a flat-deck head from booking to release', () => {
  test('its record keeps no chamber figures, and another shape keeps no limits of an engine maker', async () => {
    const { casting: kept } = await seeCasting(owner, castingId)
    expect(kept.figures.map(({ key }) => key)).toContain('exhaustRecessionLeastIn')
    expect(kept.figures.map(({ key }) => key)).not.toContain('nominalCc')
    const open = await addCasting(
      owner,
      addCastingSchema.parse({ ...record, name: 'Ferrow P2', chamberShape: 'closed' }),
      at(monday),
    )
    const keys = (await seeCasting(owner, open.castingId)).casting.figures.map(({ key }) => key)
    expect(keys).toContain('nominalCc')
    expect(keys).not.toContain('exhaustRecessionLeastIn')
  })

  test('a minimum over the maximum is refused', () => {
    const any = { ...record.figures.any, intakeRecessionLeastIn: '.060' }
    const parsed = addCastingSchema.safeParse({ ...record, figures: { ...record.figures, any } })
    expect(parsed.error?.issues.map(({ path }) => path.join('.'))).toEqual(['figures.any.intakeRecessionLeastIn'])
  })

  test('booked: no cc of it is kept, and its route has none', async () => {
    const { visit, route } = await dossier()
    expect(visit).toMatchObject({ targetCc: null, presentCc: null })
    const steps = route.map(({ stepId }) => stepId)
    expect(steps).toEqual(expect.arrayContaining(['thickness', 'seat-before', 'flat-cut', 'seat-after', 'finished']))
    expect(steps).not.toContain('chambers')
  })

  test('the plan: 4.1320 to 4.1200 is 12 thou; every valve 12 nearer, every injector 12 farther out', async () => {
    await through('seat-before')
    await plan({})
    const { record: kept } = (await seePlan(owner, pairId)).versions[0] ?? {}
    // 41320 − 41200 = 120 ten-thousandths.
    expect(kept?.flatIn).toBeCloseTo(0.012, 10)
    expect(kept?.flatDeck?.wantedThicknessIn).toBe(4.12)
    expect(kept).toMatchObject({ predictedAfterCutCc: null, predictedFinishedCc: null, targetCc: null })
    const rows = kept?.flatDeck?.heads[0]
    const valve = (of: string) => rows?.valves.find((row) => row.valve === of)?.afterIn
    expect(valve('1-intake')).toBeCloseTo(0.028, 10)
    expect(valve('2-exhaust')).toBeCloseTo(0.033, 10)
    expect(rows?.injectors.map(({ afterIn }) => Number(afterIn.toFixed(6)))).toEqual([0.072, 0.074])
    // π/4·16.387064·(1.5²·(40 + 41) + 1.6²·46 and 1.5²·(42 + 40) + 1.6²·45)/1000, the mean of both, then each 12 less.
    const pocket = (intake: number, exhaust: number) =>
      (Math.PI / 4) * 16.387064 * (2.25 * intake + 2.56 * exhaust) * 0.001
    expect(kept?.flatDeck?.beforeCc).toBeCloseTo((pocket(81, 46) + pocket(82, 45)) / 2, 9)
    expect(kept?.flatDeck?.afterCc).toBeCloseTo((pocket(57, 34) + pocket(58, 33)) / 2, 9)
    expect(kept?.cautions).toEqual([])
  })

  test('a cut past the engine maker’s minimum is told with what to do about it', async () => {
    await through('seat-before')
    await plan({ thicknessIn: '4.1140' })
    const { record: kept } = (await seePlan(owner, pairId)).versions[0] ?? {}
    // 18 off: exhaust valves 28 and 27, minimum 30; intake valves 22, 23, 24, 22, minimum 24.
    const said = kept?.cautions.map(cutCautionText).join('\n') ?? ''
    expect(said).toContain('chamber 2 exhaust: the valve would lie 0.0270 in below the deck')
    expect(said).toContain('sink its seat 3 thou more')
    expect(said).toContain('5 valves are past it')
  })

  test('no angle, and nothing to cut where it is thin enough', async () => {
    await through('seat-before')
    expect((await refusalOf(plan({ kind: 'angle' }))).message).toContain('A flat-deck head is cut flat')
    expect((await refusalOf(plan({ thicknessIn: '4.1350' }))).message).toContain('there is nothing to cut')
    expect((await refusalOf(plan({ thicknessIn: '4.0900' }))).message).toContain('the minimum is 4.100 in')
  })

  test('at the mill: a depth and a thickness, never cc', async () => {
    await through('seat-before')
    await plan({})
    await driveTo(hands, visitId, 'flat-cut')
    const step = await seeStep(owner, visitId, keyOf('flat-cut'), monday)
    expect(step.plan.huge).toMatchObject({
      value: '12.0',
      unit: 'thou',
      note: '4.1200 in thick at the thinnest corner',
    })
    expect(step.plan.pass).toBeNull()
    expect(step.fields.map(({ kind }) => kind)).not.toContain('cc')
    expect(step.fields.map(({ kind }) => kind)).toContain('cut-depth')
  })

  test('measured finished by thickness, valves and injectors; released with both figures on its sheet', async () => {
    await through('seat-before')
    await plan({})
    await through('flat-cut', { 'flat-cut': { 'cut-depth': '12 thou' } })
    await driveThrough(hands, visitId, 'final', { 'seat-after': after, finished })
    const { visit, facts } = await dossier()
    const { missing } = await import('@/lib/core/route/completeness').then(({ completeness }) => ({
      missing: completeness(facts),
    }))
    expect(missing).toEqual([])
    const { revision } = await releaseVisit(owner, { visitId, version: visit.version, reason: '' }, at(monday))
    expect(revision).toBe(1)
    const client = await db()
    const release = await client.release.findFirstOrThrow({ where: { visitId } })
    const sheet = release.facts
    expect(sheet).toContain('intake 0.0280 (was 0.0400), 0.0290 (was 0.0410) in; exhaust 0.0340 (was 0.0460) in')
    expect(sheet).toContain('0.0740 (was 0.0620) in')
    expect(sheet).toContain('Valve below the deck')
    expect(sheet).toContain('Injector protrusion')
    expect(sheet).not.toContain('Chambers, mean')
  })

  test('a valve under the minimum sends it to the seat machine, and is not released until it is put right', async () => {
    await through('seat-before')
    await plan({})
    await through('flat-cut', { 'flat-cut': { 'cut-depth': '12 thou' } })
    const low = { recession: { ...(after.recession as object), '2-exhaust': '.029' } }
    await driveTo(hands, visitId, 'seat-after')
    await tick(hands, visitId, 'seat-after', low)
    const { route } = await dossier()
    expect(route.find(({ stepId }) => stepId === 'seat-work')).toMatchObject({ state: 'ready' })
  })
})
