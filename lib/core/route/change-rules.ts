import type { StepRef } from './keys'
import { nextOwnId, noRules, type OwnStep, type RouteRules, type StepChange } from './rules'
import { stationLabels } from './stations'
import { tableOf } from './table'
import { restored } from './work-taken-away'
import { stations, type Station } from './step-ids'

/** One change of the tables, as the owner makes it. */
export type RulesChange =
  | { readonly kind: 'stations'; readonly names: Readonly<Record<Station, string>> }
  | { readonly kind: 'step'; readonly ref: StepRef; readonly to: Required<StepChange> }
  /** Without an id it is new. */
  | { readonly kind: 'own'; readonly step: Omit<OwnStep, 'id'> & { readonly id: OwnStep['id'] | null } }
  /** As they stood once. */
  | { readonly kind: 'restore'; readonly then: RouteRules }

/** The rules with the change made; only what differs from the tables that every shop starts with is kept. */
export function changeRules(rules: RouteRules, change: RulesChange): RouteRules {
  switch (change.kind) {
    case 'stations':
      return { ...rules, stationNames: differing(change.names) }
    case 'step':
      return { ...rules, changed: withStep(rules.changed, change.ref, change.to) }
    case 'own':
      return { ...rules, own: withOwn(rules, change.step) }
    case 'restore':
      return restored(change.then, rules)
  }
}

const differing = (names: Readonly<Record<Station, string>>): RouteRules['stationNames'] =>
  Object.fromEntries(
    stations.map((id) => [id, names[id].trim()] as const).filter(([id, name]) => name !== stationLabels[id]),
  )

function withStep(
  changed: RouteRules['changed'],
  ref: StepRef,
  { label, station, cells, waitsFor, undoneBy }: Required<StepChange>,
): RouteRules['changed'] {
  const { [ref]: _before, ...others } = changed
  const stock = tableOf(noRules).rowOf(ref)
  const change: StepChange = {
    ...(label.trim() !== stock.label && { label: label.trim() }),
    ...(station !== stock.station && { station }),
    ...(cells.join() !== stock.cells.join() && { cells }),
    ...(waitsFor.length > 0 && { waitsFor }),
    ...(undoneBy.length > 0 && { undoneBy }),
  }
  return Object.keys(change).length === 0 ? others : { ...others, [ref]: change }
}

const withOwn = (
  rules: RouteRules,
  { id, ...step }: Omit<OwnStep, 'id'> & { id: OwnStep['id'] | null },
): readonly OwnStep[] =>
  id === null
    ? [...rules.own, { id: nextOwnId(rules), ...step }]
    : rules.own.map((own) => (own.id === id ? { id, ...step } : own))
