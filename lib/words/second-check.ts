import type { SecondCheckNeed } from '../core/route/codes'
import { formatThou } from '../core/units/format-figure'

/** Who may do it, said wherever a cut waits for it. */
export const whoMayCheck = 'Any other person with the machinist’s right may do it, not the one who takes the head.'

/** Why a cut waits: "Second check first: this cut is 25 thou, deeper than 20 thou. …" */
export const secondCheckText = ({ depthIn, deeperThanIn, readsChamber }: SecondCheckNeed): string =>
  `Second check first: this cut is ${formatThou(depthIn)}, deeper than ${formatThou(deeperThanIn)}. Another person ${readsChamber ? 'reads one chamber and confirms' : 'confirms'} plan and head. ${whoMayCheck}`

/** Refusals of a second check, and of a cut by the wrong person. */
export const secondCheckRefusals = {
  taker: 'You took this head. Another person does the second check.',
  checker: 'You did the second check of this head. Another person makes the cut.',
  notNeeded: 'This step needs no second check now. Reload the page.',
} as const

/** The two readings of one chamber do not agree: "Chamber 2 was 62.1 cc before, now 63.9. …" */
export const disagreeText = (chamber: string, beforeCc: number, nowCc: number): string =>
  `Chamber ${chamber} was ${beforeCc.toFixed(1)} cc, now ${nowCc.toFixed(1)}. Read it again. If both stand, put the head on hold.`

export type SecondCheckDone = {
  /** "flat cut" */
  readonly step: string
  readonly by: string
  /** Who made the cut, or took the head for it; '' while nobody has. */
  readonly takenBy: string
  /** "chamber 2, 62.1 cc"; '' on a flat deck. */
  readonly read: string
  readonly day: string
}

/** Both names for the job sheet and the head's page: "Second check of the flat cut: R. Tull, chamber 2, 62.1 cc, …" */
export const secondCheckDoneText = ({ step, by, takenBy, read, day }: SecondCheckDone): string =>
  `Second check of the ${step}: ${by} ${read === '' ? '' : `read ${read}, `}confirmed plan and head, ${day}. ${takenBy === '' ? 'Not cut yet.' : `Cut by ${takenBy}.`}`
