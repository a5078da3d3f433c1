import type { Cause } from './do-again'
import type { StepRef } from './keys'
import type { OwnCondition } from './own-conditions'
import type { Cells } from './cells'
import type { ReadingKind } from '../readings/types'
import type { OwnStepId, Station } from './step-ids'

/** What the shop changed at a step that stands in the table from the start. Order and "do again" are only ever added to. */
export type StepChange = {
  readonly label?: string
  readonly station?: Station
  readonly cells?: Cells
  /** Steps that must come first, beside those that physics demands. */
  readonly waitsFor?: readonly StepRef[]
  /** Work that makes it "do again", beside what does so anyway. */
  readonly undoneBy?: readonly Cause[]
}

/** A step that the shop added: work of its own, or a service that it sends out. */
export type OwnStep = {
  readonly id: OwnStepId
  readonly label: string
  readonly station: Station
  readonly cells: Cells
  /** For the columns where it comes on a condition; '' where there are none. */
  readonly when: OwnCondition | ''
  /** What the condition's figure is held against, in inches; null for a condition without a figure. */
  readonly limitIn: number | null
  /** It stands right after this one in working order. */
  readonly after: StepRef
  readonly waitsFor: readonly StepRef[]
  readonly undoneBy: readonly Cause[]
  /** What it owes before it can be ticked. */
  readonly owes: readonly ReadingKind[]
  /** It makes chips or dust: the head is washed, wrapped and inspected after it. */
  readonly machining: boolean
  /** No longer on any route; kept for the heads and prices that name it. */
  readonly retired: boolean
}

/**
 * What a shop made of the tables of steps, conditions, order and "do again" that it started with. Stored with the limits,
 * a new version at each change. What physics demands cannot be taken away here, only added to.
 */
export type RouteRules = {
  readonly stationNames: Readonly<Partial<Record<Station, string>>>
  readonly changed: Readonly<Partial<Record<StepRef, StepChange>>>
  readonly own: readonly OwnStep[]
}

/** The tables as they are. */
export const noRules: RouteRules = { stationNames: {}, changed: {}, own: [] }

/** The id of the next step that the shop adds; ids are never given twice. Example: own-1 and own-3 are there → own-4. */
export const nextOwnId = ({ own }: RouteRules): OwnStepId =>
  `own-${Math.max(0, ...own.map(({ id }) => Number(id.slice('own-'.length)))) + 1}`
