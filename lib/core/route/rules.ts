import type { Cause } from './do-again'
import type { StepRef } from './keys'
import type { OwnCondition } from './own-conditions'
import type { Cell } from './steps'
import type { ReadingKind } from '../readings/types'
import { flowOccurrences, stepIds, type OwnStepId, type Station, type StepId, type WorkId } from './types'

export type Cells = readonly [Cell, Cell, Cell, Cell]

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

export const isOwnStep = (id: string): id is OwnStepId => /^own-[1-9]\d{0,3}$/.test(id)

/** A step that stands from the start, or has the form of one that the shop added. */
export const isStepId = (id: string): id is StepId => (stepIds as readonly string[]).includes(id) || isOwnStep(id)

/** A line of ordered work, by the form of its id. */
export const isWorkId = (id: string): id is WorkId =>
  id === 'valves' ||
  (isStepId(id) && id !== 'flow') ||
  flowOccurrences.some((occurrence) => id === `flow-${occurrence}`)

/** The id of the next step that the shop adds; ids are never given twice. Example: own-1 and own-3 are there → own-4. */
export const nextOwnId = ({ own }: RouteRules): OwnStepId =>
  `own-${Math.max(0, ...own.map(({ id }) => Number(id.slice('own-'.length)))) + 1}`
