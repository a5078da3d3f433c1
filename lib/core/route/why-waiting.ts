import type { RouteRules } from './rules'
import { stationName } from './rules-words'
import type { Station } from './step-ids'
import type { Whereabouts } from './types'

/** What is known of a visit that may hold it up. */
export type MayWait = {
  readonly place: { readonly whereabouts: string } | null
  readonly steps: readonly { readonly label: string; readonly station: string }[]
  readonly holds: readonly { readonly reason: string }[]
  readonly waits: readonly { readonly what: string; readonly promisedOn: string | null }[]
  readonly findings: readonly { readonly what: string }[]
  readonly supply: readonly {
    readonly line: {
      readonly order: { readonly promisedOn: string | null; readonly vendor: { readonly name: string } }
    }
  }[]
  readonly outside: readonly {
    readonly order: { readonly promisedOn: string | null; readonly vendor: { readonly name: string } }
  }[]
}

const promised = (day: string | null): string => (day ? `, promised ${day}` : ', no promise')

const onOrder = (bought: MayWait['supply'][number] | undefined): string =>
  bought ? `on order from ${bought.line.order.vendor.name}${promised(bought.line.order.promisedOn)}` : 'not yet ordered'

/** Why a head is not further on, in words: what it waits for, or who has it. */
export function whyWaiting(visit: MayWait, rules: RouteRules): string {
  const where = (visit.place?.whereabouts ?? 'expected') as Whereabouts
  const [hold, wait, finding, away, step] = [
    visit.holds[0],
    visit.waits[0],
    visit.findings[0],
    visit.outside[0],
    visit.steps[0],
  ]
  if (where === 'expected') return 'not here yet'
  if (where === 'on order') return onOrder(visit.supply[0])
  if (where === 'held' && hold) return `held: ${hold.reason}`
  if (where === 'away' && away) return `away at ${away.order.vendor.name}${promised(away.order.promisedOn)}`
  if (where === 'waiting for parts' && wait) return `waiting for ${wait.what}${promised(wait.promisedOn)}`
  if (where === 'waiting for an answer' && finding) return `waiting for the customer’s answer: ${finding.what}`
  if (where === 'in house' && step)
    return `${step.label} (${stationName(step.station as Station, rules).toLowerCase()})`
  return where
}
