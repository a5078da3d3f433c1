import { beforeAll, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import { recordReadingsSchema } from '@/lib/schemas/visit'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { releaseDraft } from '@/lib/use-cases/release/release-draft'
import { finishedTarget } from '@/lib/dossier/finished-checks'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import type { TestDatabase } from '@/tests/setup/database'
import { at, machinist, monday, owner } from '../jobs/counter-shop'
import { shopReadyToRelease } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase
let job: BookedJob
const finished = keyOf('finished')
const visitOf = (place: number) => job.heads[place]?.visitId ?? ''
const corners = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']

const measure = (place: number, kind: 'thickness' | 'finish', text: string, points = corners) =>
  recordReadings(
    machinist,
    recordReadingsSchema.parse({
      visitId: visitOf(place),
      step: finished,
      seen: 99_999,
      entry: {
        readings: points.map((point) => ({ kind, point, text, notTaken: null })),
        instrumentId: null,
        conditions: {},
        takenAt: null,
      },
    }),
    at(monday),
  )
const cautions = async (place: number) => (await seeStep(machinist, visitOf(place), finished, monday)).cautions

beforeAll(async () => {
  ;({ database, job } = await shopReadyToRelease())
})

it('says where the finished corners are entered that the mate differs, at both heads and before release', async () => {
  await measure(0, 'thickness', '4.4820')
  expect(await cautions(0)).toEqual([])
  // The shop starts with 0.002 in: 4.4850 − 4.4820 = 0.0030.
  await measure(1, 'thickness', '4.4850')
  const mate = job.heads[1]?.tag ?? ''
  expect(await cautions(0)).toEqual([
    `${mate}, its mate, is 0.0030 in thicker at the intake edge (the pair may differ by 0.0020 in)`,
    `${mate}, its mate, is 0.0030 in thicker at the exhaust edge (the pair may differ by 0.0020 in)`,
  ])
  expect((await cautions(1))[0]).toContain('0.0030 in thinner')
  const draft = await releaseDraft(owner, { visitId: visitOf(0), reason: '' }, monday)
  expect(draft.warnings.filter((words) => words.includes('thicker'))).toHaveLength(2)
})

it('says that a finish is rougher than the figure that was asked', async () => {
  await database.client.job.updateMany({ data: { finishAsked: '30 µin or better' } })
  await measure(0, 'finish', '42', [''])
  expect((await cautions(0)).at(-1)).toBe('The finish is 42 µin, rougher than asked (30 µin or better)')
  await measure(0, 'finish', '30', [''])
  expect((await cautions(0)).filter((words) => words.includes('finish'))).toEqual([])
})

it('holds what is being typed against the mate’s edge, and against the finish asked', () => {
  const mates = [{ tag: 'T-0402', corners: { 'intake-1': 4.48, 'intake-2': 4.482 } }]
  const ground = { mates, pairThicknessIn: 0.002, finishAsked: '30 µin or better' }
  // (4.480 + 4.482)/2 = 4.481, and 0.002 to either side.
  const target = finishedTarget('thickness', 'intake-1', ground)
  expect(target?.text).toBe('4.4810 in on T-0402')
  expect(target?.lowest).toBeCloseTo(4.479, 9)
  expect(target?.highest).toBeCloseTo(4.483, 9)
  expect(finishedTarget('thickness', 'exhaust-1', ground)).toBeNull()
  expect(finishedTarget('finish', '', ground)).toEqual({ text: '30 µin or better', lowest: 0, highest: 30 })
  expect(finishedTarget('finish', '', { ...ground, finishAsked: 'smooth' })).toBeNull()
})
