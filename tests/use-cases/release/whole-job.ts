import { twice } from '@/lib/demo/drive/twice'
import type { z } from 'zod'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { RouteStep } from '@/lib/core/route/types'
import type { StepId, WorkId } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { loadDossier } from '@/lib/dossier/dossier'
import { acceptPlanSchema, planChoiceSchema } from '@/lib/schemas/plan'
import { entrySchema } from '@/lib/schemas/visit'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { acceptPlan } from '@/lib/use-cases/plans/accept-plan'
import { makePlanVersion } from '@/lib/use-cases/plans/make-plan-version'
import { lastSeq } from '@/lib/dossier/find-step'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { filledDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, booking, casting, head, monday, openShop, owner } from '../jobs/counter-shop'

const secret = 'only for these tests, long enough'

/** Figures of an invented casting: 6 thou to the cc, 4.500 in thick when new. */
const castingFigures = {
  thouPerCc: 6,
  openingCentreIn: 4.445,
  milledWidthIn: 7,
  deckLengthIn: 20,
  // The corners are read right at the edges.
  cornerInsetEdgeIn: 0,
  cornerInsetEndIn: 0,
  thicknessNewIn: 4.5,
  nominalCc: 64,
}

/** Bore and stroke whose volumes are worked by hand in the test. */
const engineFigures = {
  boreIn: '4.000',
  strokeIn: '3.480',
  gasketBoreIn: '4.000',
  gasketThicknessIn: '0.020',
  deckClearanceIn: '0.050',
  pistonDishCc: '5',
}

/** A shop whose casting is measured, and a job on it: two heads, 64 cc to 61 cc, flow before and after. */
export async function shopWithJob(database: TestDatabase, ordered: readonly WorkId[] = cutAndFlow): Promise<BookedJob> {
  await openShop(database)
  await openMeasuredShop(database)
  return bookAnother({ ordered })
}

/** The casting of the shop is measured. */
export async function openMeasuredShop(database: TestDatabase): Promise<void> {
  process.env.NEXTAUTH_SECRET = secret
  await database.client.castingFigure.createMany({
    data: Object.entries(castingFigures).map(([key, value]) => ({
      id: `f-${key}`,
      castingId: casting,
      form: 'any',
      key,
      value,
      text: String(value),
      unit: '',
    })),
  })
}

const cutAndFlow: readonly WorkId[] = ['flow-before', 'flat-cut', 'flow-after']

type Wanted = {
  readonly ordered?: readonly WorkId[]
  readonly targetCc?: string
  readonly pricesOnLink?: boolean
}

export const bookAnother = ({
  ordered = cutAndFlow,
  targetCc = '61.0',
  pricesOnLink = false,
}: Wanted = {}): Promise<BookedJob> =>
  book({
    heads: [head({ side: 'left', stamp: 'W1' }), head({ side: 'right', stamp: 'W2' })],
    targetCc,
    pricesOnLink,
    prices: [{ text: 'Flat cut, pair', quantity: '2', unitPrice: '95.50', tax: '0' }],
    ordered: ordered.map((work) => ({ work, note: 'internal: mind the boss' })),
    note: 'internal: he pays late',
    engine: {
      ...booking().engine,
      label: 'small V8',
      layout: 'v',
      figures: { ...booking().engine.figures, ...engineFigures },
    },
  })

const cc: Readonly<Partial<Record<StepId, readonly string[]>>> = {
  // Mean (64.2 + 63.8 + 64.1 + 63.9)/4 = 64.0, spread 0.4.
  chambers: ['64.2', '63.8', '64.1', '63.9'],
  // Mean (60.9 + 61.1 + 61.2 + 60.8)/4 = 61.0, spread 0.4.
  finished: ['60.9', '61.1', '61.2', '60.8'],
}

/** Cubic feet a minute by lift in tenths of an inch, intake; the exhaust flows 20 less. */
const intakeCfm = [60, 110, 150, 180, 200, 205]

const plain: Partial<Record<ReadingKind, string>> = {
  thickness: '4.5000',
  straightness: '0.001',
  'removed-before': '0',
  'seat-depth': '0.050',
  'cut-depth': '18 thou',
  'seat-width': '0.045',
  runout: '0.001',
  sink: '0',
  'stem-height': '1.900',
  'installed-height': '1.800',
  'retainer-to-seal': '0.640',
  'coil-bind': '1.100',
  'seat-angles': '30 45 60',
  'seat-pressure': '130',
  'open-pressure': '340',
  'spring-pressure': '130',
  finish: '40',
  'cutter-marks': 'none',
  'came-with': 'valves in a box',
  photo: 'no photo: none was asked for',
}

/** What one job reads otherwise than the others. */
export type Otherwise = (step: RouteStep, kind: ReadingKind, point: string) => string | undefined

export function answer(step: RouteStep, kind: ReadingKind, point: string, otherwise: Otherwise): string {
  const own = otherwise(step, kind, point)
  if (own !== undefined) return own
  if (kind === 'cc') return cc[step.stepId]?.[Number(point) - 1] ?? (point === 'at-stop' ? '62.0' : '61.0')
  if (kind === 'flow') {
    const [port, lift] = point.split('@')
    const base = intakeCfm[Math.round(Number(lift) * 10) - 1] ?? 0
    return String(base - (port === 'exhaust' ? 20 : 0) + (step.occurrence === 'after' ? 10 : 0))
  }
  const good = readingSpecs[kind].choices?.find((choice) => !choice.bad)?.value
  return plain[kind] ?? good ?? 'noted'
}

export const conditions = {
  chamber: '2',
  testPressureInH2O: '28',
  boreFixtureIn: '4.000',
  intakeValveIn: '2.020',
  exhaustValveIn: '1.600',
  entryFitting: 'radius plate',
  exhaustFitting: 'open',
  leakCfm: '0',
}

export const makeFlatPlan = (job: BookedJob): Promise<void> =>
  makePlan(job, { kind: 'flat', splitBy: 'flat', flatIn: '' })

type Choice = Pick<z.input<typeof planChoiceSchema>, 'kind' | 'splitBy' | 'flatIn'>

/** The customer's yes to the newest plan of the job's pair. */
export async function acceptNewest(job: BookedJob): Promise<void> {
  const { id: planId } = await (
    await db()
  ).planVersion.findFirstOrThrow({ where: { pairId: job.heads[0]?.pairId ?? '' }, orderBy: { number: 'desc' } })
  await acceptPlan(owner, acceptPlanSchema.parse({ planId, by: 'Tamsin Rook', how: 'by phone' }), at(monday))
}

export async function makePlan(job: BookedJob, plan: Choice): Promise<void> {
  const pairId = job.heads[0]?.pairId ?? ''
  const choice = planChoiceSchema.parse({
    ...plan,
    pairId,
    seenVersion: 0,
    angleIn: '',
    angleDeg: '',
    stopAtIn: '',
    sinkIn: '0',
    reason: '',
  })
  await makePlanVersion(owner, choice, at(monday))
}

/** Does every step that can be done, with its readings, in working order; stops before these. */
export async function workThrough(
  visitId: string,
  before: readonly StepId[] = ['hand-over'],
  otherwise: Otherwise = () => undefined,
  clock: () => Date = () => monday,
): Promise<void> {
  for (;;) {
    const { visit, route } = await loadDossier(await db(), visitId)
    const open = route.filter((step) => !['done', 'waived', 'not needed'].includes(step.state))
    const step = open.find((entry) => entry.waitsFor.length === 0)
    if (!step || before.includes(step.stepId)) return
    const key = { stepId: step.stepId, occurrence: step.occurrence, orderId: step.orderId }
    const readings = step.owes.flatMap((owed) =>
      owed.missing.length === 0
        ? []
        : owed.points.map((point) => ({
            kind: owed.kind,
            point,
            text: answer(step, owed.kind, point, otherwise),
            notTaken: null,
            // A chamber that was read already is read again.
            ...(owed.kind === 'cc' ? { repeat: 'again' } : {}),
          })),
    )
    const entry = entrySchema.parse({
      readings,
      instrumentId: null,
      conditions: step.stepId === 'flow' ? conditions : {},
      takenAt: null,
    })
    await twice(entry, (typed) =>
      tickStep(owner, { visitId, step: key, seen: lastSeq(visit, key), entry: typed }, at(clock())),
    )
  }
}

/** A job whose first head is done but for its release. */
export async function readyToRelease(database: TestDatabase) {
  const job = await shopWithJob(database)
  const [first, second] = job.heads
  if (!first || !second) throw new Error('The job has two heads.')
  await workThrough(first.visitId, ['flat-cut'])
  await makeFlatPlan(job)
  await workThrough(first.visitId)
  return { job, first, second }
}

/** A shop of one's own with that job, copied: working it through takes some twenty ticks. */
export async function shopReadyToRelease() {
  process.env.NEXTAUTH_SECRET = secret
  const { database, filled } = await filledDatabase('ready-to-release', readyToRelease)
  return { database, ...filled }
}

export const versionOf = async (visitId: string): Promise<number> =>
  (await (await db()).visit.findUniqueOrThrow({ where: { id: visitId } })).version
