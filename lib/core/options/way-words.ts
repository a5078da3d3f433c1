import { formatThou } from '../units/format-figure'
import type { CutOption } from './bench-types'
import type { WorkedPlan } from './plan-record-of'

/** What is cut, in a line: "Flat cut, 18 thou", "Angle cut, 47 thou at the exhaust edge, then 6 thou flat". */
export function cutLine({ record }: Pick<WorkedPlan, 'record'>): string {
  const { flatIn, angleIn, deepEdge, kind } = record
  if (kind === 'clean-up') return `Clean-up, stop at ${formatThou(flatIn)}`
  const wantedIn = record.flatDeck?.wantedThicknessIn ?? null
  if (wantedIn !== null) return `Flat cut to ${wantedIn.toFixed(4)} in thick, ${formatThou(flatIn)}`
  if (angleIn === 0) return `Flat cut, ${formatThou(flatIn)}`
  const angle = `Angle cut, ${formatThou(angleIn)} at the ${deepEdge} edge`
  return flatIn > 0 ? `${angle}, then ${formatThou(flatIn)} flat` : angle
}

const bare: Readonly<Record<CutOption['kind'], string>> = {
  leave: 'Leave it',
  'clean-up': 'Clean-up',
  flat: 'Flat cut',
  equalise: 'Flat cut to the largest chamber, then open the rest',
  'angle-flat': 'Angle cut, then flat',
  angle: 'Angle cut alone',
  open: 'Open the chambers',
}

/** A way in a line. */
export function wayTitle(way: CutOption): string {
  const { kind, worked, opensCc, start } = way
  if (kind === 'leave') return start.cutByMaker ? 'Bought in, already cut' : 'Leave it: it is there already'
  if (kind === 'open') return `Open the chambers by ${opensCc.toFixed(1)} cc`
  if (worked === null) return bare[kind]
  if (kind === 'equalise')
    return `${cutLine(worked)} to the largest chamber, then open the rest by up to ${opensCc.toFixed(1)} cc`
  return kind === 'angle' ? `${cutLine(worked)}, no flat part` : cutLine(worked)
}

/** "9 steps, out about 9 days". */
export function wayEffort({ steps, days, start }: CutOption): string {
  const count = steps.length === 1 ? '1 step' : `${steps.length} steps`
  const outside = steps.some((step) => step.outside)
  if (days === null) return `${count}; how long it is ${outside ? 'out' : 'on order'} is not known`
  if (days === 0) return `${count}, all in house`
  const what = outside ? 'out' : 'on order'
  return `${count}, ${start.supply !== 'own' && outside ? 'on order and out' : what} about ${Math.ceil(days)} days`
}
