import { beforeAll, describe, expect, it, vi } from 'vitest'
import { metalGone } from '@/lib/core/head-now/metal-gone'
import { questionsOf } from '@/lib/core/expected/questions'
import { expectedFacts } from '@/lib/dossier/expected-facts'
import { loadDossier } from '@/lib/dossier/dossier'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { removedByWords } from '@/lib/words/metal-gone'
import { questionWords } from '@/lib/words/expected'
import { monday } from '../use-cases/jobs/counter-shop'
import { makeFlatPlan, shopWithJob, workThrough, type Otherwise } from '../use-cases/release/whole-job'
import { typedFigures } from '../core/expected/facts'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 })

const flat = (valueIn: number) => ({ atIntakeEdgeIn: valueIn, atExhaustEdgeIn: valueIn, taperIn: 0 })
const asked = {
  newThicknessIn: null,
  corners: {},
  deck: { milledWidthIn: 7, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } },
  knownCuts: [],
  removedBeforeIn: null,
  isNew: false,
}

describe('metal gone by a head’s earlier visits', () => {
  const earlier = { gone: { atIntakeEdgeIn: 0.02, atExhaustEdgeIn: 0.083, taperIn: 0 }, takenAsFlat: false }
  it('is what it had lost when it last left, where nothing was typed', () => {
    const found = metalGone({ ...asked, earlier })
    expect(found).toMatchObject({ ok: true, value: { gone: earlier.gone, by: 'visits', takenAsFlat: false } })
    expect(removedByWords(found)).toBe('by this head’s earlier cuts here')
  })
  it('with the cuts since: 20 and 83, then 10 flat, are 30 and 93', () => {
    const since = { flatIn: 0.01, angleIn: 0, deepEdge: 'exhaust' } as const
    const found = metalGone({ ...asked, earlier, knownCuts: [since] })
    expect(found.ok && found.value.gone.atIntakeEdgeIn).toBeCloseTo(0.03, 12)
    expect(found.ok && found.value.gone.atExhaustEdgeIn).toBeCloseTo(0.093, 12)
  })
  it('gives way to what was typed, which counts them already, and to the corners', () => {
    expect(metalGone({ ...asked, earlier, removedBeforeIn: 0.05 })).toMatchObject({
      ok: true,
      value: { gone: flat(0.05), by: 'sum', takenAsFlat: true },
    })
    const corners = { 'intake-1': 4.47, 'intake-2': 4.47, 'exhaust-1': 4.47, 'exhaust-2': 4.47 }
    // 30 thou all over by the corners; by the cuts 20 and 83: 53 too many at the exhaust edge.
    const held = metalGone({ ...asked, newThicknessIn: 4.5, corners, earlier })
    expect(held).toMatchObject({
      ok: true,
      value: { by: 'corners', differs: { byCornersIn: expect.closeTo(0.03, 9) } },
    })
    expect(held.ok && held.value.differs?.corner).toMatch(/^exhaust/)
  })
  it('a head that is called new and was cut here is not new', () => {
    expect(metalGone({ ...asked, isNew: true, earlier })).toMatchObject({ ok: true, value: { by: 'visits' } })
    expect(metalGone({ ...asked, isNew: true })).toMatchObject({ ok: true, value: { gone: flat(0), by: 'new' } })
    expect(metalGone(asked)).toMatchObject({ ok: false, refusal: { code: 'missing' } })
  })
})

describe('a head that comes back', () => {
  let database: TestDatabase
  let again = ''
  /** No thickness is read, and nobody types what was removed before: only the record knows. */
  const unread: Otherwise = (step, kind) => (kind === 'removed-before' && step.stepId === 'thickness' ? '0' : undefined)

  beforeAll(async () => {
    database = await testDatabase()
    const job = await shopWithJob(database, ['flat-cut'])
    const visitId = job.heads[0]?.visitId ?? ''
    await workThrough(visitId, ['flat-cut'], unread)
    await makeFlatPlan(job)
    // 18 thou from touch-off, on a head from which nothing was removed before.
    await workThrough(visitId)
    const first = await database.client.visit.findUniqueOrThrow({ where: { id: visitId } })
    const rest = { ...first, id: crypto.randomUUID(), createdAt: new Date(monday.getTime() + 86_400_000), used: true }
    const pair = await database.client.pair.create({
      data: { id: crypto.randomUUID(), jobId: first.jobId, castingId: null },
    })
    await database.client.visit.create({ data: { ...rest, pairId: pair.id, scrappedAt: null } })
    again = rest.id
  })

  async function factsOfHead() {
    const head = await loadDossier(database.client, again)
    // What it is held against is the head's, whatever the step.
    const [step] = head.route
    if (!step) throw new Error('no route')
    return expectedFacts(database.client, head, step, [], {})
  }

  it('asks about less than was gone when it left; the same and more is believed', async () => {
    const facts = await factsOfHead()
    const asked = (text: string) =>
      questionsOf(typedFigures({ 'removed-before|': text }), facts).map((one) => questionWords(one))
    const [words] = asked('.010 in')
    // 0.018 less 0.003 for the gauge.
    expect(words).toMatch(
      /^0\.0100 in is unlikely: at least 0\.0150 in expected, by the 0\.0180 in gone when it left here on job 26-\d{4}\. Type it again to keep it\.$/,
    )
    expect(asked('.0149 in')).toHaveLength(1)
    expect(asked('.0151 in')).toEqual([])
    expect(asked('.018 in')).toEqual([])
    expect(asked('.030 in')).toEqual([])
  })

  it('brings the cuts of its earlier visit along, and the mill’s card says so', async () => {
    const { metalGone: found, removedBeforeIn } = await loadDossier(database.client, again)
    expect(found).toMatchObject({ ok: true, value: { by: 'visits' } })
    expect(removedBeforeIn).toBeCloseTo(0.018, 9)
    const { goneIn, job } = (await factsOfHead()).thickness.earlier ?? {}
    expect(goneIn).toBeCloseTo(0.018, 9)
    expect(job).toMatch(/^26-\d{4}$/)
    // The first visit itself knows of none before it.
    const visits = await database.client.visit.findMany({ orderBy: { createdAt: 'asc' } })
    expect((await loadDossier(database.client, visits[0]?.id ?? '')).earlier).toBeNull()
  })
})
