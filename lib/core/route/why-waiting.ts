import type { Station } from './step-ids'
import type { Whereabouts } from './types'

export type FromVendor = { readonly vendor: string; readonly promisedOn: string | null }

/** What is known of a visit that may hold it up. */
export type MayWait = {
  readonly whereabouts: Whereabouts
  /** Those that somebody could be at now. */
  readonly steps: readonly { readonly label: string; readonly station: Station }[]
  readonly holds: readonly { readonly reason: string }[]
  readonly waits: readonly { readonly what: string; readonly promisedOn: string | null }[]
  readonly findings: readonly { readonly what: string }[]
  readonly supply: readonly FromVendor[]
  readonly outside: readonly FromVendor[]
}

/** Why a head is not further on: what it waits for, or who has it. `place`: where it is says it all. */
export type WhyWaiting =
  | { readonly code: 'not-here' | 'not-ordered' }
  | ({ readonly code: 'on-order' | 'away' } & FromVendor)
  | { readonly code: 'held'; readonly reason: string }
  | { readonly code: 'parts'; readonly what: string; readonly promisedOn: string | null }
  | { readonly code: 'answer'; readonly what: string }
  | { readonly code: 'step'; readonly label: string; readonly station: Station }
  | { readonly code: 'place'; readonly whereabouts: Whereabouts }

/** Of several things that hold a head up, the first. */
export const whyWaiting = (visit: MayWait): WhyWaiting =>
  firstOf(visit) ?? { code: 'place', whereabouts: visit.whereabouts }

function firstOf({ whereabouts, ...visit }: MayWait): WhyWaiting | null {
  const [hold, wait, finding, step] = [visit.holds[0], visit.waits[0], visit.findings[0], visit.steps[0]]
  const [bought, away] = [visit.supply[0], visit.outside[0]]
  switch (whereabouts) {
    case 'expected':
      return { code: 'not-here' }
    case 'on order':
      return bought ? { code: 'on-order', ...bought } : { code: 'not-ordered' }
    case 'held':
      return hold ? { code: 'held', reason: hold.reason } : null
    case 'away':
      return away ? { code: 'away', ...away } : null
    case 'waiting for parts':
      return wait ? { code: 'parts', what: wait.what, promisedOn: wait.promisedOn } : null
    case 'waiting for an answer':
      return finding ? { code: 'answer', what: finding.what } : null
    case 'in house':
      return step ? { code: 'step', label: step.label, station: step.station } : null
    default:
      return null
  }
}
