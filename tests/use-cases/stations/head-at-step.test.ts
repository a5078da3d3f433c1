import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { StepId } from '@/lib/core/route/step-ids'
import { headPlan } from '@/lib/drawing/head-plan'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { machinist, monday } from '../jobs/counter-shop'
import { angledHead, outAndBack, readAngled } from '../release/angled-head'
import { workThrough, type Otherwise } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

/** Holes of 0.470 for bolts of 0.4375: the bolt has 0.0163 to each side. */
const hole = { diameterIn: 0.47, boltIn: 0.4375, blind: false }

async function angledHeadWithBolts(database: TestDatabase): Promise<string> {
  const visitId = await angledHead(database)
  const { head } = await database.client.visit.findUniqueOrThrow({
    where: { id: visitId },
    include: { head: true },
  })
  const castingId = head.castingId ?? ''
  await database.client.castingBolt.createMany({
    data: [
      { id: 'bolt-1', castingId, label: 'L1', xIn: 0.7, yIn: 2, lengthIn: 3.75, ...hole },
      { id: 'bolt-2', castingId, label: 'S2', xIn: 6.3, yIn: 18, lengthIn: 1.5, ...hole },
    ],
  })
  await database.client.castingFigure.create({
    data: { id: 'length', castingId, form: '', key: 'deckLengthIn', value: 20, text: '20', unit: 'in' },
  })
  return visitId
}

const drawingAt = async (visitId: string, stepId: StepId) =>
  (await seeStep(machinist, visitId, { stepId, occurrence: '', orderId: null }, monday)).drawing

const wordsOf = (drawing: NonNullable<Awaited<ReturnType<typeof drawingAt>>>): string =>
  headPlan(drawing)
    .marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    .join(' | ')

describe('this head, drawn where its edges and holes are worked on', () => {
  let visitId: string
  beforeAll(async () => {
    visitId = await angledHeadWithBolts(await testDatabase())
    await outAndBack(visitId, '63 EX', '')
  })

  it('shows at the mill which edge is deep, and where the chambers and corners stand', async () => {
    await workThrough(visitId, ['flat-cut'], readAngled)
    const drawing = (await drawingAt(visitId, 'flat-cut')) ?? expect.unreachable()
    expect(drawing).toMatchObject({ cutKind: 'angle-flat', deepEdge: 'exhaust', chambers: 4 })
    expect(wordsOf(drawing)).toContain('exhaust edge · deep edge')
    expect(drawing.chamberReadings.every((reading) => reading !== null)).toBe(true)
    expect(Object.values(drawing.cornerReadings).every((reading) => reading !== null)).toBe(true)
  })

  it('shows at the bolt bench which holes the tilt leaves too tight, and to which side', async () => {
    // atan(0.063/7) = 0.5157°, sine 0.0090: over 3.73 the bolt leans 0.0336, more than 0.0163; over 1.48 only 0.0133.
    const drawing = (await drawingAt(visitId, 'bolt-fit')) ?? expect.unreachable()
    expect(drawing.bolts.map(({ label, slotted, long }) => [label, slotted, long])).toEqual([
      ['L1', true, true],
      ['S2', false, false],
    ])
    expect(drawing).toMatchObject({ slotToward: 'intake', slotsAre: 'needed' })
    expect(wordsOf(drawing)).toContain('slots are needed toward the intake edge')
    // 0.7 of 7 in from the shallow, the intake edge; 2 of 20 in from the marked end.
    expect(drawing.bolts[0]?.across).toBeCloseTo(0.1, 9)
    expect(drawing.bolts[0]?.along).toBeCloseTo(0.1, 9)
  })

  it('shows, once they are cut, what the bench wrote, and no more what was reckoned', async () => {
    const noted: Otherwise = (step, kind, point) =>
      kind === 'bolt-slotted' ? 'L1 and S2' : readAngled(step, kind, point)
    await workThrough(visitId, ['dowel-fit'], noted)
    const drawing = (await drawingAt(visitId, 'dowel-fit')) ?? expect.unreachable()
    expect(drawing.bolts.map(({ slotted }) => slotted)).toEqual([true, true])
    expect(drawing.slotsAre).toBe('cut')
    expect(wordsOf(drawing)).toContain('slots open toward the intake edge; slotted as noted: L1 and S2')
  })

  it('stands at no other step', async () => {
    expect(await drawingAt(visitId, 'chambers')).toBeNull()
    expect(await drawingAt(visitId, 'final')).toBeNull()
  })
})
