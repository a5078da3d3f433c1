import { confirmedCut, takenIn } from '@/lib/core/route/outside-cuts'
import type { SpecCut } from '@/lib/core/spec/spec-sheet'
import type { PlaneFit } from '@/lib/core/straightness/plane-fit'
import { formatFigure } from '@/lib/core/units/format-figure'
import { pointLabel } from '@/lib/core/readings/points'
import { orderText } from '@/lib/words/route'
import type { RouteStep } from '@/lib/core/route/types'
import { leanShiftWords } from '@/lib/words/corner-inset'
import { mostGoneIn, sumOfGone } from '@/lib/core/head-now/gone'
import { cornersAt, edgesLost, edgesMeasured, fitOf, wasCut } from '../measured-cut'
import type { Dossier } from '../dossier'
import { answerWords, newestText, readAt } from '../reading-text'

const depth = (valueIn: number): string => formatFigure(valueIn, 'cutDepth')

/** Every cut of this visit: planned, as measured, how, and by whom. */
export function cutsOf(head: Dossier): SpecCut[] {
  return [...angleCut(head), ...vendorFlat(head), ...flatCut(head), ...wholeCut(head), ...intakeFace(head)]
}

/** The step of a cut that was made; one that was not stands among what was not done. */
const madeStep = ({ route }: Dossier, stepId: 'angle-cut' | 'flat-cut') =>
  route.find((step) => step.stepId === stepId && step.state === 'done')

const byWhom = ({ byVendor }: Pick<RouteStep, 'byVendor'>): string => (byVendor ? orderText(byVendor) : 'in house')

function angleCut(head: Dossier): SpecCut[] {
  const { plan, facts } = head
  const read = readAt(head.newest, 'angle-cut', 'edge-depth')
  const step = madeStep(head, 'angle-cut')
  if (!plan || !step) return []
  const order = facts.orders.find((entry) => entry.confirmed.includes('angle-cut'))
  const arrived = order ? cornersAt(head, 'arrival-figures', order.orderId) : []
  const measured =
    read.length > 0
      ? {
          measured: read.map((reading) => `${pointLabel(reading.point)} edge ${answerWords(reading)}`).join(', '),
          how: 'at both edges',
        }
      : byCorners(head, arrived, 'on arrival, on the new deck')
  return [
    {
      what: `Angle cut, deep at the ${plan.deepEdge} edge`,
      planned: `${depth(facts.plan?.angleIn ?? plan.angleIn)} at the ${plan.deepEdge} edge`,
      ...measured,
      by: byWhom(step),
    },
  ]
}

/** A flat part that a vendor cut with the angle. */
const vendorFlat = ({ facts }: Dossier): SpecCut[] =>
  facts.orders
    .filter((order) => confirmedCut(order) && order.flatIn > 0)
    .map((order) => ({
      what: 'Flat part, cut outside',
      planned: depth(order.flatIn),
      measured: null,
      how: '',
      by: orderText(order),
    }))

function flatCut(head: Dossier): SpecCut[] {
  const step = madeStep(head, 'flat-cut')
  if (!step || step.byVendor) return []
  const cleanUp = head.plan?.kind === 'clean-up'
  const outside = head.facts.orders.reduce(
    (sum, order) => sum + (confirmedCut(order) ? takenIn(head.facts, order, 'flatIn') : 0),
    0,
  )
  const plannedIn = (head.facts.plan?.flatIn ?? 0) - outside
  const read = readAt(head.newest, 'flat-cut', 'cut-depth').at(-1)
  return [
    {
      what: cleanUp ? 'Clean-up cut' : 'Flat cut',
      planned: plannedIn > 0 ? `${cleanUp ? 'no more than ' : ''}${depth(plannedIn)}` : null,
      measured: read ? answerWords(read) : null,
      how: read ? 'depth from touch-off' : '',
      by: byWhom(step),
    },
  ]
}

/** All of it together, by the thickness of the head before and after. */
function wholeCut(head: Dossier): SpecCut[] {
  const found = byCorners(head, cornersAt(head, 'finished'), 'finished')
  const { plan } = head.facts
  if (found.measured === null || !plan) return []
  const planned = [
    plan.flatIn > 0 ? `flat ${depth(plan.flatIn)}` : '',
    plan.angleIn > 0 ? `angle part ${depth(plan.angleIn)}` : '',
  ]
  return [
    {
      what: 'All deck cuts together',
      planned: planned.filter((part) => part !== '').join(', ') || null,
      ...found,
      by: '',
    },
  ]
}

function byCorners(
  head: Dossier,
  after: ReturnType<typeof cornersAt>,
  when: string,
): { measured: string | null; how: string } {
  const fit = fitOf(head, after)
  if (fit)
    return {
      measured: fitWords(head, fit),
      how: [`thickness at the corners, before and ${when}${residualWords(fit)}`, leanShiftWords(fit.leanShiftIn)]
        .filter((part) => part !== '')
        .join('; '),
    }
  const lost = edgesLost(head, after)
  if (!lost) return { measured: null, how: '' }
  const measured = `intake edge ${depth(lost.intake)}, exhaust edge ${depth(lost.exhaust)}`
  return { measured, how: `thickness lost at the corners, before and ${when}` }
}

function fitWords({ facts }: Dossier, fit: PlaneFit): string {
  const flat = `flat ${depth(fit.flatIn)}`
  const angled = facts.plan?.kind === 'angle' || facts.plan?.kind === 'angle-flat'
  return angled ? `${flat}, angle part ${depth(fit.angleIn)}, ${fit.angleDeg.toFixed(2)}°` : flat
}

const residualWords = ({ residual }: PlaneFit): string =>
  residual ? `; corners flat to ${depth(residual.rmsIn)} (rms)` : ''

function intakeFace(head: Dossier): SpecCut[] {
  const read = readAt(head.newest, 'intake', 'face-depth')
  if (read.length === 0) return []
  const measured = read.map((reading) => `${pointLabel(reading.point)} ${answerWords(reading)}`).join(', ')
  const planned = head.plan?.intakeSideIn ?? null
  return [
    {
      what: 'Intake face',
      // Less than nothing to take off is a gap, and no cut was planned.
      planned: planned === null || planned < 0 ? null : depth(planned),
      measured,
      how: 'depth at both ends',
      by: 'in house',
    },
  ]
}

/** "0.0430 in at the deepest, over all visits", or what is not known. */
export function removedWords(head: Dossier): string {
  const before = head.metalGone.ok ? head.metalGone.value.gone : null
  const cut = wasCut(head) ? edgesMeasured(head) : { intake: 0, exhaust: 0 }
  if (before !== null && cut !== null) {
    const all = sumOfGone([before, { atIntakeEdgeIn: cut.intake, atExhaustEdgeIn: cut.exhaust, taperIn: 0 }])
    return `${depth(mostGoneIn(all))} at the deepest, over all visits`
  }
  const beforeIn = head.removedBeforeIn
  const nowIn = cut && Math.max(cut.intake, cut.exhaust)
  const now = nowIn === null ? 'this visit’s cut was not measured at the deepest' : `${depth(nowIn)} on this visit`
  return `${beforeIn === null ? beforeUnknown(head) : `${depth(beforeIn)} before`}; ${now}`
}

const beforeUnknown = ({ visit, casting }: Dossier): string =>
  (visit.head.newThicknessIn ?? casting.thicknessNewIn) === undefined
    ? 'new thickness unknown'
    : 'what went before was not measured'

/** Where cutter marks lie by the inserts; '' when there are none. */
export function cutterMarkWords({ newest: readings }: Dossier): string {
  const text = newestText(readings, 'cutter-marks')
  if (text === '' || text === 'none') return ''
  if (text === 'outside') return 'Cutter marks by the inserts lie outside the sealing area.'
  return text === 'reaching'
    ? 'Cutter marks by the inserts reach the sealing area.'
    : `Cutter marks by the inserts: ${text}.`
}
