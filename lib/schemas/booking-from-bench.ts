import { castingFigureKeys } from '@/lib/core/casting/figures'
import { engineFigureKeys } from '@/lib/core/engine/figures'
import type { WayKind } from '@/lib/core/options/bench-types'
import type { HeadSource } from '@/lib/core/options/estimate'
import { figureName } from '@/lib/core/options/figure-names'
import type { WorkId } from '@/lib/core/route/step-ids'
import { emptyBench, type BenchForm } from './bench-question'
import { emptyBooking, emptyEngineFigures, emptyHead, orderOf, type BookJobForm, type FirstPlanForm } from './job'
import { emptyWanted } from './wanted'

/** The work that a way of the cut bench orders; what follows from it the route adds by itself. */
export const workOfWay: Readonly<Record<WayKind, readonly WorkId[]>> = {
  leave: [],
  'clean-up': ['flat-cut'],
  flat: ['flat-cut'],
  equalise: ['flat-cut', 'open-chamber'],
  'angle-flat': ['angle-cut', 'flat-cut'],
  angle: ['angle-cut'],
  open: ['open-chamber'],
}

const cuts: readonly WorkId[] = ['flat-cut', 'angle-cut', 'open-chamber']

/** Ordered lines with a way's work in place of the cuts that stood there. */
export const withWay = (ordered: BookJobForm['ordered'], kind: WayKind): BookJobForm['ordered'] => [
  ...ordered.filter(({ work }) => !cuts.includes(work)),
  ...workOfWay[kind].map((work) => ({ work, note: '' })),
]

/** The cut that was chosen at the bench. */
export type ChosenCut = {
  readonly kind: WayKind
  /** Its angle part in inches; 0: none. */
  readonly angleIn: number
  /** In a line, as the bench said it. */
  readonly title: string
  readonly source: HeadSource
  /** What it costs a head, line by line. */
  readonly prices: BookJobForm['prices']
}

export type FromBench = {
  readonly chosen: ChosenCut | null
  /** Who asked, when somebody wrote it down. */
  readonly customer: string
  /** What was written to the answer. */
  readonly note: string
  readonly estimateId: string
  readonly benchQuery: string
}

/** Kinds that a plan has. An equalising cut goes by the largest chamber: its plan is made once the chambers are read. */
const planKinds: Readonly<Partial<Record<WayKind, FirstPlanForm['kind']>>> = {
  'clean-up': 'clean-up',
  flat: 'flat',
  angle: 'angle',
  'angle-flat': 'angle-flat',
}

/** The chosen cut as a first plan; null where nothing is cut by one. */
export function firstPlanOf(
  { stopAtIn, sinkIn }: Pick<BenchForm, 'stopAtIn' | 'sinkIn'>,
  { kind, angleIn, title }: Pick<ChosenCut, 'kind' | 'angleIn' | 'title'>,
): FirstPlanForm | null {
  const planned = planKinds[kind]
  if (planned === undefined) return null
  const split = planned === 'angle-flat' ? `${Number(angleIn.toFixed(6))} in` : ''
  return {
    kind: planned,
    angleIn: split,
    stopAtIn: planned === 'clean-up' ? stopAtIn : '',
    sinkIn,
    words: title.slice(0, 200),
  }
}

/** A booking begun from the cut bench: nothing that was typed there is typed again, and nothing is lost. */
export function bookingFromBench(bench: BenchForm, from: FromBench): BookJobForm {
  const booking = emptyBooking()
  const { chosen } = from
  const ordered = orderOf(booking.preset)
  return {
    ...booking,
    customer: { ...booking.customer, name: from.customer },
    engine: {
      ...booking.engine,
      layout: bench.layout,
      camInHead: bench.camInHead,
      figures: { ...emptyEngineFigures(), ...bench.engine },
    },
    targetCc: bench.targetCc,
    wanted: { ...emptyWanted(), finishedThicknessIn: bench.thicknessIn },
    heads: [
      {
        ...emptyHead(),
        castingId: bench.castingId,
        presentCc: presentOf(bench),
        used: bench.used,
        source: chosen?.source ?? 'customer',
      },
    ],
    ordered: chosen === null ? ordered : withWay(ordered, chosen.kind),
    prices: chosen?.prices ?? [],
    classFlatOnly: bench.classFlatOnly,
    classMinCc: bench.classMinCc,
    classMaxCut: bench.classMaxCut,
    note: noteOf(bench, from),
    estimateId: from.estimateId,
    benchQuery: from.benchQuery,
    firstPlan: chosen === null ? null : firstPlanOf(bench, chosen),
  }
}

const eachOf = (typed: string): string[] =>
  typed
    .replace(/\s+(?=(cc|in|cm)\b)/gi, '')
    .split(/[\s;]+/)
    .filter(Boolean)

/** One figure stands for the head; of one a chamber their mean does, and the note has each. */
function presentOf({ presentCc }: BenchForm): string {
  const each = eachOf(presentCc)
  if (each.length <= 1) return presentCc
  const values = each.map((text) => Number.parseFloat(text.replace(',', '.')))
  if (values.some((value) => !Number.isFinite(value))) return ''
  return `${(values.reduce((sum, value) => sum + value, 0) / values.length).toFixed(2)} cc`
}

/** What a job has no field of its own for, in words: the chosen cut, and what was said of the head. */
function noteOf(bench: BenchForm, { chosen, note }: FromBench): string {
  const figures = castingFigureKeys.flatMap((key) => {
    const typed = bench.figures[key]?.trim() ?? ''
    return typed === '' ? [] : [`${figureName(key)} ${typed}`]
  })
  const said = [
    chosen !== null && `chosen: ${chosen.title}`,
    (bench.measured || eachOf(bench.presentCc).length > 1) &&
      `chambers now ${bench.presentCc} cc, ${bench.measured ? 'measured' : 'nominal'}`,
    bench.goneIn !== '' && `removed since new ${bench.goneIn}`,
    bench.sinkIn !== '' && `seat work to come ${bench.sinkIn}`,
    bench.stopAtIn !== '' && `clean-up stops at ${bench.stopAtIn}`,
    bench.thicknessNow !== '' && `thickness now ${bench.thicknessNow}`,
    bench.intakeRecession !== '' && `intake valve recession ${bench.intakeRecession}`,
    bench.exhaustRecession !== '' && `exhaust valve recession ${bench.exhaustRecession}`,
    bench.protrusion !== '' && `injector protrusion ${bench.protrusion}`,
    ...figures,
  ].filter((line) => line !== false)
  const told = said.length === 0 ? [] : [`Cut bench: ${said.join('; ')}.`]
  return [note, ...told].filter(Boolean).join('\n').slice(0, mostOfNote)
}

/** What a job's note holds; the bench's question is kept with the job in full. */
const mostOfNote = 1000

/** The question that a booking, as it is filled in so far, asks of the cut bench: for its first head. */
export function benchFromBooking(booking: BookJobForm): BenchForm {
  const [head = emptyHead()] = booking.heads
  return {
    ...emptyBench(head.castingId),
    presentCc: head.presentCc,
    thicknessIn: booking.wanted?.finishedThicknessIn ?? '',
    used: head.used,
    targetCc: head.targetCc === '' ? booking.targetCc : head.targetCc,
    classFlatOnly: booking.classFlatOnly,
    classMinCc: booking.classMinCc,
    classMaxCut: booking.classMaxCut,
    layout: booking.engine.layout,
    camInHead: booking.engine.camInHead,
    engine: Object.fromEntries(engineFigureKeys.map((key) => [key, booking.engine.figures[key]])),
  }
}
