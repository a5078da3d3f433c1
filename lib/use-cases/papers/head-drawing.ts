import type { CornerName } from '@/lib/core/straightness/corner-point'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { formatFigure } from '@/lib/core/units/format-figure'
import type { EffectiveReading } from '@/lib/data/facts'
import { corners, cornersAt, edgesMeasured, wasCut } from './measured-cut'
import type { PaperHead } from './paper-head'
import { bareText, mean, valuedAt } from './read'

/** The drawing of a head before its cuts: what is planned, and what was read so far. */
export function headDrawing(head: PaperHead): HeadDrawing {
  const cut = head.facts.plan
  const deepEdge = head.plan && (cut?.angleIn ?? 0) > 0 ? head.plan.deepEdge : null
  return {
    ...withReadings(head, 'chambers', 'thickness'),
    cutKind: cut?.kind ?? 'none',
    deepEdge,
    edgeDepths: plannedDepths(head),
  }
}

/** The drawing of a head as it leaves: what was really cut, as far as it was measured. */
export function finishedDrawing(head: PaperHead): HeadDrawing {
  const cut = wasCut(head)
  const depths = cut ? edgesMeasured(head) : null
  const angled = head.route.some((step) => step.stepId === 'angle-cut' && step.state === 'done')
  const depth = (valueIn: number | undefined) =>
    valueIn === undefined ? null : formatFigure(valueIn, 'cutDepth')
  return {
    ...withReadings(head, 'finished', 'finished'),
    cutKind: cut ? (head.facts.plan?.kind ?? 'none') : 'none',
    deepEdge: angled && head.plan ? head.plan.deepEdge : null,
    edgeDepths: { intake: depth(depths?.intake), exhaust: depth(depths?.exhaust) },
  }
}

function withReadings(
  head: PaperHead,
  ccStep: 'chambers' | 'finished',
  cornerStep: 'thickness' | 'finished',
) {
  const cc = valuedAt(head.readings, ccStep, 'cc')
  return {
    chambers: head.chambers,
    cornerReadings: cornerTexts(cornersAt(head, cornerStep)),
    chamberReadings: Array.from({ length: head.chambers }, (_, place) => {
      const reading = cc.find(({ point }) => point === String(place + 1))
      return reading ? bareText(reading, 'cc') : null
    }),
    bolts: boltPlaces(head),
    slotToward: null,
  }
}

/** Planned depth at each edge; the flat part goes off both, the angle part off the deep one. */
function plannedDepths({ plan, facts }: PaperHead): HeadDrawing['edgeDepths'] {
  const cut = facts.plan
  if (!plan || !cut || cut.kind === 'none') return { intake: null, exhaust: null }
  const at = (edge: 'intake' | 'exhaust'): string =>
    formatFigure(cut.flatIn + (edge === plan.deepEdge ? cut.angleIn : 0), 'cutDepth')
  return { intake: at('intake'), exhaust: at('exhaust') }
}

function cornerTexts(readings: readonly EffectiveReading[]): HeadDrawing['cornerReadings'] {
  const text = (corner: CornerName): string | null => {
    const reading = readings.find(({ point }) => point === corner)
    return reading && reading.value !== null ? bareText({ ...reading, value: reading.value }, 'in') : null
  }
  return Object.fromEntries(corners.map((corner) => [corner, text(corner)])) as HeadDrawing['cornerReadings']
}

/** Bolt holes that have a place on record, by their share of the deck; longer than the mean is long. */
function boltPlaces({ visit, casting }: PaperHead): HeadDrawing['bolts'] {
  const { milledWidthIn, deckLengthIn } = casting
  const record = visit.head.casting
  const bolts = record?.bolts ?? []
  const lengths = bolts.flatMap(({ lengthIn }) => (lengthIn === null ? [] : [lengthIn]))
  if (!record || !milledWidthIn || !deckLengthIn) return []
  return bolts.flatMap(({ xIn, yIn, lengthIn }) => {
    if (xIn === null || yIn === null) return []
    const fromShallow = xIn / milledWidthIn
    return [
      {
        across: record.deepEdge === 'exhaust' ? fromShallow : 1 - fromShallow,
        along: yIn / deckLengthIn,
        long: lengthIn !== null && lengthIn > mean(lengths),
        slotted: false,
      },
    ]
  })
}
