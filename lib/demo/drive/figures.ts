import { demoCorners } from '../corners'
import { cutSoFar, depthAcross, flatLeftIn } from './cut-so-far'
import { figureAt, type Asked, type Found } from './found'
import { scatter } from './scatter'
import { portOf } from '@/lib/core/readings/valves'
import { radians } from '@/lib/core/units/degrees'
import { mean } from '@/lib/core/mean'

/** Typed as a machinist does: no nought before the point. */
export function inches(value: number, decimals = 4): string {
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? '0' : text.replace(/^(-?)0\./, '$1.')
}

const noise = (found: Found, { step, kind, point }: Asked, most: number): number =>
  scatter([found.tag, step.stepId, step.occurrence, kind, point].join('|'), most)

const chamberList = (found: Found): string[] => Array.from({ length: found.chambers }, (_, at) => String(at + 1))

/** What the chamber held when it came: read, else the figure on record with a casting's own scatter. */
export function presentCc(found: Found, chamber: string): number {
  const read = figureAt(found, 'open-chamber', 'cc', chamber) ?? figureAt(found, 'chambers', 'cc', chamber)
  const nominalCc = found.visit.presentCc ?? found.casting.nominalCc ?? 64
  return read ?? nominalCc + scatter(`${found.tag} chamber ${chamber}`, 0.35)
}

/** Chamber by chamber about the head's own mean: no cut evens them out. */
function aboutMean(found: Found, chamber: string): number {
  const all = chamberList(found).map((each) => presentCc(found, each))
  return presentCc(found, chamber) - mean(all)
}

/** Taken out of each chamber by what is cut so far, at the plan's rate. */
function takenCc(found: Found): number {
  const { plan, casting } = found
  if (!plan) return 0
  const share = (casting.openingCentreIn ?? 0.5) / (casting.milledWidthIn ?? 1)
  return (depthAcross(cutSoFar(found), share) * 1000) / plan.thouPerCc
}

export function cc(found: Found, asked: Asked): string {
  const wobble = noise(found, asked, 0.12)
  const at = asked.point.startsWith('at-') ? '1' : asked.point
  return (ccAt(found, asked, at) + wobble).toFixed(1)
}

function ccAt(found: Found, { step, point }: Asked, chamber: string): number {
  const { plan } = found
  const targetCc = found.visit.targetCc ?? plan?.predictedFinishedCc ?? null
  const toSize = plan !== null && plan.kind !== 'none' && plan.kind !== 'clean-up'
  switch (step.stepId) {
    case 'open-chamber':
      return (targetCc ?? presentCc(found, chamber)) + scatter(`${found.tag} opened ${chamber}`, 0.2)
    case 'flat-cut': {
      const sizeCc = (targetCc ?? presentCc(found, chamber)) - (plan?.seatWorkGivesCc ?? 0) + aboutMean(found, chamber)
      return point === 'at-stop' ? sizeCc + 1 : sizeCc
    }
    case 'finished':
      if (targetCc !== null && toSize) return targetCc + aboutMean(found, chamber)
      return presentCc(found, chamber) - takenCc(found)
    case 'arrival-figures':
      return presentCc(found, chamber) - takenCc(found)
    default:
      return presentCc(found, chamber)
  }
}

/** Across the deck, where the gauge stands: half an inch inside the edge. */
function shareOf(found: Found, edge: string): number {
  const inside = demoCorners.edge.value / (found.casting.milledWidthIn ?? 6)
  return edge === (found.plan?.deepEdge ?? 'exhaust') ? 1 - inside : inside
}

/** A used head has lost a few thou to somebody before us. */
const goneBefore = (found: Found): number => (found.visit.used ? 0.004 + scatter(`${found.tag} skimmed`, 0.003) : 0)

/** The same at each corner or nearly. */
function thicknessBefore(found: Found, corner: string): number {
  const newIn = found.visit.head.newThicknessIn ?? found.casting.thicknessNewIn ?? 4.096
  return newIn - goneBefore(found) + scatter(`${found.tag} corner ${corner}`, 0.0008)
}

export function thickness(found: Found, asked: Asked): string {
  const corner = asked.point
  const before = figureAt(found, 'thickness', 'thickness', corner) ?? thicknessBefore(found, corner)
  if (asked.step.stepId === 'thickness') return thicknessBefore(found, corner).toFixed(4)
  const cut = cutSoFar(found)
  const [edge = ''] = corner.split('-')
  const angle = Math.atan(cut.angleIn / (found.casting.milledWidthIn ?? 6))
  // Gauged on the new deck: square to it, not to the old one.
  const left = (before - depthAcross(cut, shareOf(found, edge))) * Math.cos(angle)
  return (left + noise(found, asked, 0.0003)).toFixed(4)
}

export function removedBefore(found: Found): string {
  const newIn = found.visit.head.newThicknessIn ?? found.casting.thicknessNewIn
  if (newIn === undefined) return 'new thickness unknown'
  const corners = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']
  const thinnest = Math.min(...corners.map((corner) => Number(thicknessBefore(found, corner).toFixed(4))))
  return inches(Math.max(0, newIn - thinnest), 3)
}

export function straightness(found: Found, asked: Asked): string {
  const cut = asked.step.stepId !== 'thickness'
  const most = asked.point === 'along' ? 0.003 : 0.0015
  const gapIn = cut ? 0.0005 + noise(found, asked, 0.0005) : most + noise(found, asked, most / 2)
  return inches(Math.round(gapIn * 2000) / 2000)
}

/** Deck to the named circle where it is nearest: as on record, less what a used head has lost. */
function seatBefore(found: Found, chamber: string, port: string): number {
  const intake = port === 'intake'
  const newIn = intake ? found.casting.intakeSeatDepthIn : found.casting.exhaustSeatDepthIn
  const own = scatter(`${found.tag} seat ${chamber} ${port}`, 0.004)
  return newIn === undefined ? (intake ? 0.118 : 0.137) + own : newIn - goneBefore(found) + own
}

/** Where the rim is nearest to the deck, across: a valve that opens toward the deep edge leans its rim to the shallow one. */
function nearestXIn({ casting }: Found, port: string): number {
  const intake = port === 'intake'
  const xIn = (intake ? casting.intakeValveXIn : casting.exhaustValveXIn) ?? 3
  const leanDeg = (intake ? casting.intakeValveAngleDeg : casting.exhaustValveAngleDeg) ?? 0
  const acrossIn = (intake ? casting.intakeTopCutIn : casting.exhaustTopCutIn) ?? 0
  return xIn - Math.sign(leanDeg) * (acrossIn / 2) * Math.cos(radians(leanDeg))
}

export function seatDepth(found: Found, asked: Asked): string {
  const [chamber = '1', port = 'intake'] = asked.point.split('-')
  const before = figureAt(found, 'seat-before', 'seat-depth', asked.point) ?? seatBefore(found, chamber, port)
  if (asked.step.stepId === 'seat-before') return inches(seatBefore(found, chamber, port), 3)
  const share = nearestXIn(found, port) / (found.casting.milledWidthIn ?? 6)
  return inches(before - depthAcross(cutSoFar(found), share) + noise(found, asked, 0.001), 3)
}

/** Deck to a valve head of a flat-deck head: less what is cut, plus what seat work has sunk it. */
export function recession(found: Found, asked: Asked): string {
  const intake = asked.point.includes('intake')
  const own = (intake ? 0.041 : 0.047) + scatter(`${found.tag} valve ${asked.point}`, 0.0015)
  const before = figureAt(found, 'seat-before', 'recession', asked.point) ?? own
  if (asked.step.stepId === 'seat-before') return inches(own, 3)
  const sunk =
    figureAt(found, 'seat-work', 'sink', asked.point) ??
    figureAt(found, 'seat-work', 'sink', intake ? 'intake' : 'exhaust') ??
    0
  return inches(before - cutSoFar(found).flatIn + sunk + noise(found, asked, 0.0004), 3)
}

/** The injector stands in the head: the deck comes up to it. */
export function protrusion(found: Found, asked: Asked): string {
  const own = 0.061 + scatter(`${found.tag} injector ${asked.point}`, 0.001)
  const before = figureAt(found, 'seat-before', 'protrusion', asked.point) ?? own
  if (asked.step.stepId === 'seat-before') return inches(own, 3)
  return inches(before + cutSoFar(found).flatIn + noise(found, asked, 0.0004), 3)
}

/** Total depth from touch-off: the plan's, set as well as a mill can be set; a clean-up takes what it needs. */
export function cutDepth(found: Found, asked: Asked): string {
  const part = found.plan?.kind === 'clean-up' ? 0.6 : 1
  const depthIn = flatLeftIn(found) * part + noise(found, asked, 0.0004)
  return inches(Math.round(depthIn * 2000) / 2000)
}

export const edgeDepth = (found: Found, { point }: Asked): string =>
  shareOf(found, point) === 1 ? inches(found.plan?.angleIn ?? 0) : '0'

/** More valve, more air: rises with lift and levels off; what was done to the head since shows in it. */
export function flow(found: Found, asked: Asked): string {
  const [port = 'intake', lift = '0.3'] = asked.point.split('@')
  const intake = port === 'intake'
  const valveIn = (intake ? found.casting.intakeValveIn : found.casting.exhaustValveIn) ?? (intake ? 1.94 : 1.5)
  const most = (intake ? 64 : 80) * valveIn ** 2
  const own = 1 + scatter(`${found.tag} ${port} port`, 0.02)
  const done = (stepId: string) => found.route.some((step) => step.stepId === stepId && step.state === 'done')
  const worked = (done('port') ? 1.07 : 1) * (done('seat-work') ? 1.012 : 1) * (done('flat-cut') ? 0.994 : 1)
  const levelled = 1 - Math.exp(-Number(lift) / 0.3)
  return (most * levelled * own * worked * (1 + noise(found, asked, 0.008))).toFixed(0)
}

const valves: Readonly<Record<string, readonly [intake: number, exhaust: number, most: number, decimals: number]>> = {
  'guide-clearance': [0.0017, 0.0022, 0.0002, 4],
  'insert-press': [0.005, 0.0055, 0.0004, 4],
  'seat-width': [0.055, 0.07, 0.004, 3],
  sink: [0.004, 0.003, 0.002, 3],
  'stem-height': [1.981, 1.994, 0.008, 3],
  'installed-height': [1.812, 1.806, 0.006, 3],
  'retainer-to-seal': [0.642, 0.631, 0.012, 3],
  'ptv-clearance': [0.121, 0.148, 0.006, 3],
}

/** Figures that are read at each valve. */
export function ofValves(found: Found, asked: Asked): string {
  const [intake, exhaust, most, decimals] = valves[asked.kind] ?? [0.1, 0.1, 0.01, 3]
  return inches((portOf(asked.point) === 'exhaust' ? exhaust : intake) + noise(found, asked, most), decimals)
}

export const springPressure = (found: Found, asked: Asked): string =>
  ((asked.kind === 'open-pressure' || asked.point === 'open' ? 342 : 128) + noise(found, asked, 6)).toFixed(0)

export const vacuum = (found: Found, asked: Asked): string => (22 + noise(found, asked, 1.5)).toFixed(1)
