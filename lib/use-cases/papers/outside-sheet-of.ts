import { cutAngleDeg } from '@/lib/core/cut/angle'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { Figure } from '@/lib/core/spec/spec-sheet'
import type { RouteRules } from '@/lib/core/route/rules'
import { stepLabel } from '@/lib/core/route/table'
import type { StepId } from '@/lib/core/route/step-ids'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import type { paperOrder } from '@/lib/data/papers'
import type { OutsideSheetData, OutsideSheetHead } from '@/lib/pdf/outside-sheet'
import { expectedCorners } from '@/lib/core/at-bench/expected-corners'
import { pointLabel } from '@/lib/core/readings/points'
import { cornersOf } from '@/lib/core/straightness/corners-fit'
import { deckOf } from '@/lib/dossier/route-facts'
import { headDrawing } from '@/lib/dossier/head-drawing'
import { addressBlock, shopBlock } from '@/lib/dossier/shop-block'
import type { Dossier } from '@/lib/dossier/dossier'
import { addressWarning, qrTextOf } from './tag-address'
import type { SpecShop } from '@/lib/dossier/spec/spec-sheet-of'
import { castingWords, marksWords } from '@/lib/dossier/spec/spec-words'
import { dateWords, dayWords } from '@/lib/core/shop/when-words'

type Order = Awaited<ReturnType<typeof paperOrder>>
type Line = Order['visits'][number]

const depth = (valueIn: number): string => formatFigure(valueIn, 'cutDepth')

/** Who pays for a rework, as the vendor reads it. */
const costOf: Readonly<Record<string, string>> = { vendor: 'your', shop: 'our', customer: 'the customer’s' }

/** What travels with the heads of one order. No price, and nothing of the customer. */
export function outsideSheetOf(
  order: Order,
  heads: readonly Dossier[],
  shop: SpecShop,
  sentBy: string,
): OutsideSheetData {
  const scope = order.scope.split(',').filter((step) => step !== '') as StepId[]
  const flatDecks = heads.every(({ facts }) => facts.flatDeck)
  const cut = scope.some((step) => step === 'angle-cut' || step === 'flat-cut')
  return {
    language: shop.locale,
    shop: shopBlock(shop),
    orderNumber: order.number,
    redo: order.redoOf ? `Rework of ${order.redoOf.number}, at ${costOf[order.redoCost ?? ''] ?? 'our'} cost.` : '',
    vendor: addressBlock(order.vendor),
    sentOn: order.sentAt ? dateWords(order.sentAt, shop) : '',
    promised: dayWords(order.promisedOn, shop),
    contact: sentBy === '' ? '' : `Ask for ${sentBy}`,
    heads: order.visits.flatMap((line) => {
      const head = heads.find((entry) => entry.visit.id === line.visitId)
      return head ? [outsideHead(order, scope, line, head)] : []
    }),
    checks: checksOf(scope, cut, flatDecks),
    notes: order.instructions,
    cautions: cut ? ['Call before the first cut if anything is unclear.'] : [],
    addressWarning: addressWarning(),
  }
}

function outsideHead(order: Order, scope: readonly StepId[], line: Line, head: Dossier): OutsideSheetHead {
  const deepEdge = line.angleIn > 0 ? (head.plan?.deepEdge ?? 'exhaust') : null
  const leftIn = (head.facts.plan?.flatIn ?? 0) - line.flatIn
  const leaves = !order.finishesToSize && scope.includes('angle-cut') && leftIn > 0
  return {
    tag: head.label,
    qrText: qrTextOf(head.label),
    casting: castingWords(head),
    marks: marksWords(head),
    work: [...workOf(scope, line, deepEdge, head.settings.rules), ...angleWords(line, head)],
    figures: figuresOf(line, deepEdge),
    redo: redoWords(order, head),
    corners: cornerRows(line, head),
    wanted: wantedWords(line, head),
    edge: deepEdge ? `Take the metal off the ${deepEdge} edge: it is the deep one.` : '',
    leave: leaveWords(order, scope, leaves ? leftIn : 0),
    drawing: drawingOf(head, line, deepEdge, scope),
    withIt: line.comesWith === '' ? [] : [line.comesWith],
  }
}

/** That the figures are the whole cut, and what is cut here afterwards: read wrongly, a head is cut twice. */
function leaveWords({ finishesToSize }: Order, scope: readonly StepId[], leftIn: number): string {
  if (!scope.includes('angle-cut')) return ''
  const exactly = 'Cut exactly these figures, no more.'
  if (finishesToSize) return `${exactly} That is the finished size: we do not cut it afterwards.`
  return leftIn > 0 ? `${exactly} We take another ${depth(leftIn)} flat here afterwards.` : exactly
}

/** Why the work is done again: only that is to be put right. '' for new work. */
function redoWords({ redoOfId }: Order, { visit }: Dossier): string {
  const rejected = redoOfId === null ? undefined : visit.outside.find(({ orderId }) => orderId === redoOfId)
  return rejected && rejected.rejectedWhy !== '' ? `Put right only this: ${rejected.rejectedWhy}` : ''
}

/** Thickness at each corner as it was sent, and as wanted after the vendor's cut; empty where nothing was read or nothing is cut. */
function cornerRows({ orderId, angleIn, flatIn }: Line, head: Dossier): OutsideSheetHead['corners'] {
  if (angleIn + flatIn <= 0) return []
  const sentSeq = head.facts.orders.find((order) => order.orderId === orderId)?.sentSeq ?? Infinity
  const now = cornersOf(head.newest.filter(({ seq }) => seq < sentSeq))
  const wanted = expectedCorners(now, { flatIn, angleIn }, deckOf(head.visit, head.casting, head.settings))
  if (!wanted.ok) return []
  return wanted.value.map(({ corner, valueIn }) => ({
    corner: pointLabel(corner),
    nowIn: formatBare(now[corner] ?? NaN, 'thickness'),
    wantedIn: formatBare(valueIn, 'thickness'),
  }))
}

/** How well it must be cut. */
function wantedWords({ angleIn, flatIn }: Line, { settings, chambers, visit }: Dossier): string[] {
  if (angleIn + flatIn <= 0) return []
  const along = settings.straightAlongPerCylinderIn * chambers
  return [
    `Depths within ${depth(settings.cutToleranceIn)}; straight to ${depth(settings.straightAcrossIn)} across, ${depth(along)} along`,
    visit.job.finishAsked === '' ? '' : `Deck finish: ${visit.job.finishAsked}`,
    'End 1 is the marked end; chambers count from it',
  ].filter((line) => line !== '')
}

/** The tilt as a machine may be set to it. */
function angleWords({ angleIn }: Line, { casting: { milledWidthIn } }: Dossier): string[] {
  const angle = angleIn > 0 ? cutAngleDeg(angleIn, milledWidthIn) : null
  if (!angle?.ok || !milledWidthIn) return []
  return [`That is an angle of ${angle.value.toFixed(3)}° over a milled width of ${milledWidthIn.toFixed(3)} in`]
}

type Deep = 'intake' | 'exhaust' | null
const other = (edge: 'intake' | 'exhaust') => (edge === 'intake' ? 'exhaust' : 'intake')

function workOf(scope: readonly StepId[], { angleIn, flatIn }: Line, deepEdge: Deep, rules: RouteRules): string[] {
  const cuts = [
    deepEdge
      ? `Angle cut: ${depth(angleIn)} at the ${deepEdge} edge, running out to nothing at the ${other(deepEdge)} edge`
      : '',
    flatIn > 0 ? `Flat cut: ${depth(flatIn)} over the whole deck` : '',
  ]
  const rest = scope
    .filter((step) => !(step === 'angle-cut' && deepEdge) && !(step === 'flat-cut' && flatIn > 0))
    .map((step) => stepLabel(step, rules))
  return [...cuts.filter((line) => line !== ''), ...rest]
}

function figuresOf({ angleIn, flatIn }: Line, deepEdge: Deep): Figure[] {
  const figure = (label: string, valueIn: number, note: string): Figure => ({
    label,
    value: formatBare(valueIn, 'cutDepth'),
    unit: 'in',
    note,
  })
  if (deepEdge) {
    return [
      figure(`${deepEdge} edge`, angleIn + flatIn, 'deep edge'),
      figure(`${other(deepEdge)} edge`, flatIn, 'shallow edge'),
    ]
  }
  return flatIn > 0 ? [figure('Flat cut', flatIn, '')] : []
}

/** The same drawing as on our own papers, with the vendor's share of the cut; slots only where the vendor is to cut them. */
function drawingOf(head: Dossier, { angleIn, flatIn }: Line, deepEdge: Deep, scope: readonly StepId[]): HeadDrawing {
  const drawn = headDrawing(head)
  const slots = scope.includes('bolt-fit')
    ? drawn
    : {
        ...drawn,
        slotToward: null,
        slotNote: '',
        bolts: drawn.bolts.map((bolt) => ({ ...bolt, slotted: false })),
      }
  const cut = angleIn + flatIn > 0
  const at = (edge: 'intake' | 'exhaust') => (cut ? depth(flatIn + (edge === deepEdge ? angleIn : 0)) : null)
  return {
    ...slots,
    cutKind: deepEdge ? (flatIn > 0 ? 'angle-flat' : 'angle') : flatIn > 0 ? 'flat' : 'none',
    deepEdge,
    edgeDepths: { intake: at('intake'), exhaust: at('exhaust') },
    chamberReadings: [],
  }
}

function checksOf(scope: readonly StepId[], cut: boolean, flatDecks: boolean): string[] {
  const seats = flatDecks ? 'Seats, and how deep the valves lie' : 'Seats, and the volume of one chamber'
  return [
    'Count and damage, the day it comes back',
    ...(cut
      ? [
          'Thickness at the four corners',
          'Straightness of the new deck',
          'The depth you wrote on it, and cutter marks by the inserts',
        ]
      : []),
    ...(scope.includes('weld') || scope.includes('straighten') ? ['Cracks and straightness'] : []),
    ...(scope.includes('seat-work') ? [seats] : []),
  ]
}
