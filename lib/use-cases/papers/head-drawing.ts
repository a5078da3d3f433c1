import type { CornerName } from '@/lib/core/straightness/corner-point'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { formatFigure } from '@/lib/core/units/format-figure'
import type { EffectiveReading } from '@/lib/data/facts'
import { corners, cornersAt } from './measured-cut'
import type { PaperHead } from './paper-head'
import { bareText, mean, valuedAt } from './read'

/** The plan drawing of a head: planned depths, and what was read so far, before or finished. */
export function headDrawing(head: PaperHead, when: 'before' | 'finished'): HeadDrawing {
  const { plan, facts } = head
  const kind = facts.plan?.kind ?? 'none'
  const deepEdge = plan && (facts.plan?.angleIn ?? 0) > 0 ? plan.deepEdge : null
  const cc = valuedAt(head.readings, when === 'before' ? 'chambers' : 'finished', 'cc')
  return {
    chambers: head.chambers,
    cutKind: kind,
    deepEdge,
    edgeDepths: edgeDepths(head),
    cornerReadings: cornerTexts(cornersAt(head, when === 'before' ? 'thickness' : 'finished')),
    chamberReadings: Array.from({ length: head.chambers }, (_, place) => {
      const reading = cc.find(({ point }) => point === String(place + 1))
      return reading ? bareText(reading, 'cc') : null
    }),
    bolts: boltPlaces(head),
    slotToward: null,
  }
}

/** Planned depth at each edge; the flat part goes off both, the angle part off the deep one. */
function edgeDepths({ plan, facts }: PaperHead): HeadDrawing['edgeDepths'] {
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
