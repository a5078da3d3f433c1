import { cornerInsetOf } from '@/lib/core/straightness/corner-inset'
import type { CornerName } from '@/lib/core/straightness/corner-point'
import { ports, valveCountsOf } from '@/lib/core/readings/valves'
import { insetWords } from '@/lib/words/corner-inset'
import { slotAfterCuts } from '@/lib/core/head-now/hole-slot'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { formatFigure } from '@/lib/core/units/format-figure'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import { corners, cornersAt, edgesMeasured, wasCut } from './measured-cut'
import type { Dossier } from './dossier'
import { bareText, newestText, valuedAt } from './reading-text'
import { holesNamed, saysNone } from './slotted-holes'
import { mean } from '@/lib/core/mean'

/** As much of a head as its drawing shows. */
export type DrawnHead = Pick<
  Dossier,
  'facts' | 'plan' | 'casting' | 'chambers' | 'newest' | 'metalGone' | 'settings'
> & {
  readonly visit: { readonly head: Pick<Dossier['visit']['head'], 'casting'> }
}

/** The drawing of a head before its cuts: what is planned, and what was read so far. */
export function headDrawing(head: DrawnHead): HeadDrawing {
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
export function finishedDrawing(head: Dossier): HeadDrawing {
  const cut = wasCut(head)
  const depths = cut ? edgesMeasured(head) : null
  const angled = head.route.some((step) => step.stepId === 'angle-cut' && step.state === 'done')
  const depth = (valueIn: number | undefined) => (valueIn === undefined ? null : formatFigure(valueIn, 'cutDepth'))
  const { touched, ...drawn } = withReadings(head, 'finished', 'finished')
  const cornersRead = Object.values(drawn.cornerReadings).some((reading) => reading !== null)
  return {
    ...drawn,
    ...(touched && cornersRead ? { touched } : {}),
    cutKind: cut ? (head.facts.plan?.kind ?? 'none') : 'none',
    deepEdge: angled && head.plan ? head.plan.deepEdge : null,
    edgeDepths: { intake: depth(depths?.intake), exhaust: depth(depths?.exhaust) },
  }
}

function withReadings(head: DrawnHead, ccStep: 'chambers' | 'finished', cornerStep: 'thickness' | 'finished') {
  const cc = valuedAt(head.newest, ccStep, 'cc')
  return {
    chambers: head.chambers,
    ...flatDeckOf(head),
    ...touchedAt(head),
    cornerReadings: cornerTexts(cornersAt(head, cornerStep)),
    chamberReadings: Array.from({ length: head.chambers }, (_, place) => {
      const reading = cc.find(({ point }) => point === String(place + 1))
      return reading ? bareText(reading, 'cc') : null
    }),
    ...boltsOf(head),
  }
}

/** The valves and injectors of a flat-deck head, as far as the record has their places across. */
function flatDeckOf({ facts, casting, visit }: DrawnHead): Pick<HeadDrawing, 'flatDeck'> {
  const { milledWidthIn } = casting
  if (!facts.flatDeck) return {}
  const across = (xIn: number | undefined): number | null => {
    if (xIn === undefined || !milledWidthIn) return null
    const fromShallow = Math.min(1, Math.max(0, xIn / milledWidthIn))
    return visit.head.casting?.deepEdge === 'intake' ? 1 - fromShallow : fromShallow
  }
  const valves = ports.flatMap((port) => {
    const place = across(casting[`${port}ValveXIn`])
    const diameterIn = casting[`${port}ValveIn`]
    if (place === null || diameterIn === undefined || !milledWidthIn) return []
    const valve = { across: place, widthShare: diameterIn / milledWidthIn }
    return Array.from({ length: valveCountsOf(casting)[port] }, () => valve)
  })
  return { flatDeck: { valves, injectorAcross: across(casting.injectorXIn) } }
}

/** Without the deck's size the points are drawn a little inside, and the words say how far. */
const drawnInside = 0.06

function touchedAt({ casting, settings }: DrawnHead): Pick<HeadDrawing, 'touched'> {
  const inset = cornerInsetOf(casting, settings.cornerInset)
  if (inset === null) return {}
  const share = (insetIn: number, sizeIn: number | undefined) => (sizeIn ? insetIn / sizeIn : drawnInside)
  return {
    touched: {
      acrossShare: share(inset.edgeIn, casting.milledWidthIn),
      alongShare: share(inset.endIn, casting.deckLengthIn),
      words: insetWords(inset),
    },
  }
}

/** Planned depth at each edge; the flat part goes off both, the angle part off the deep one. */
function plannedDepths({ plan, facts }: DrawnHead): HeadDrawing['edgeDepths'] {
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

type BoltRow = NonNullable<Dossier['visit']['head']['casting']>['bolts'][number]

/**
 * Bolt holes that have a place on record, by their share of the deck; longer than the mean is long. Slotted are those that
 * the bench named; while it has not been there, those that the plan's angle needs. A slot opens toward the shallow edge,
 * as the bolt leans.
 */
function boltsOf(
  head: DrawnHead,
): Pick<HeadDrawing, 'bolts' | 'slotToward' | 'slotsAre'> & { readonly slotNote?: string } {
  const { milledWidthIn, deckLengthIn } = head.casting
  const record = head.visit.head.casting
  const note = newestText(head.newest, 'bolt-slotted').trim()
  const isRead = note !== ''
  const noted = isRead && !saysNone(note) ? { slotNote: note } : {}
  if (!record || !milledWidthIn || !deckLengthIn) return { bolts: [], slotToward: null, ...noted }
  const lengths = record.bolts.flatMap(({ lengthIn }) => (lengthIn === null ? [] : [lengthIn]))
  const slotted = isRead
    ? holesNamed(
        note,
        record.bolts.map(({ label }) => label),
      )
    : holesToSlot(head, record.bolts)
  const bolts = record.bolts.flatMap(({ xIn, yIn, lengthIn, label }) => {
    if (xIn === null || yIn === null) return []
    const fromShallow = xIn / milledWidthIn
    return [
      {
        across: record.deepEdge === 'exhaust' ? fromShallow : 1 - fromShallow,
        along: yIn / deckLengthIn,
        long: lengthIn !== null && lengthIn > mean(lengths),
        slotted: slotted.has(label),
        label,
      },
    ]
  })
  const angled = (head.facts.plan?.angleIn ?? 0) > 0
  const any = angled && bolts.some((bolt) => bolt.slotted)
  const shallow = head.plan?.deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  return { bolts, slotToward: any ? shallow : null, slotsAre: isRead ? 'cut' : 'needed', ...noted }
}

/** Holes that the plan's angle leaves too tight for their bolts, as far as hole, bolt and length are on record. */
function holesToSlot({ plan, facts, casting, metalGone }: DrawnHead, bolts: readonly BoltRow[]): ReadonlySet<string> {
  const cut = facts.plan
  if (!plan || !cut || cut.angleIn <= 0) return new Set()
  const deck = { flatIn: cut.flatIn, angleIn: cut.angleIn, milledWidthIn: casting.milledWidthIn }
  return new Set(
    bolts.flatMap(({ label, lengthIn, diameterIn, boltIn, xIn }) => {
      const hole = {
        lengthNewIn: lengthIn ?? casting.boltHoleLengthIn,
        holeDiameterIn: diameterIn ?? casting.boltHoleIn,
        boltDiameterIn: boltIn ?? casting.boltIn,
        fromShallowEdgeIn: xIn,
      }
      const slot = slotAfterCuts(hole, metalGone.ok ? metalGone.value.gone : null, deck, plan.deepEdge)
      return slot.ok && slot.value.slotIn > 0 ? [label] : []
    }),
  )
}
