import { emptyWanted } from './wanted'
import { engineFigureKeys } from '@/lib/core/engine/figures'
import type { WayKind } from '@/lib/core/options/bench-types'
import type { WorkId } from '@/lib/core/route/step-ids'
import { emptyBench, type BenchForm } from './bench'
import { emptyBooking, emptyEngineFigures, emptyHead, orderOf, type BookJobForm } from './job'

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

/** A booking begun from a question to the cut bench: nothing that was typed there is typed again. */
export function bookingFromBench(bench: BenchForm, kind: WayKind | null, estimateId: string): BookJobForm {
  const booking = emptyBooking()
  const ordered = orderOf(booking.preset)
  return {
    ...booking,
    engine: {
      ...booking.engine,
      layout: bench.layout,
      camInHead: bench.camInHead,
      figures: { ...emptyEngineFigures(), ...bench.engine },
    },
    targetCc: bench.targetCc,
    wanted: { ...emptyWanted(), finishedThicknessIn: bench.thicknessIn },
    heads: [{ ...emptyHead(), castingId: bench.castingId, presentCc: presentOf(bench), used: bench.used }],
    ordered: kind === null ? ordered : withWay(ordered, kind),
    classFlatOnly: bench.classFlatOnly,
    classMinCc: bench.classMinCc,
    classMaxCut: bench.classMaxCut,
    estimateId,
  }
}

/** One figure stands for the head; one a chamber is for the measuring bench to read again. */
const presentOf = ({ presentCc }: BenchForm): string => (/[\s;]/.test(presentCc.trim()) ? '' : presentCc)

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
