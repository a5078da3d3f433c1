export const cutKinds = ['none', 'clean-up', 'flat', 'angle', 'angle-flat'] as const
export type CutKind = (typeof cutKinds)[number]

export const stations = [
  'front-desk',
  'wash',
  'measuring-bench',
  'flow-bench',
  'port-bench',
  'deck-mill',
  'intake-mill',
  'bolt-bench',
  'seat-machine',
  'assembly',
  'outside',
] as const
export type Station = (typeof stations)[number]

export const stepIds = [
  'check-in',
  'wash-in',
  'crack',
  'pressure',
  'thickness',
  'chambers',
  'seat-before',
  'flow',
  'guides',
  'inserts',
  'weld',
  'straighten',
  'steam-holes',
  'groove',
  'coating',
  'port',
  'open-chamber',
  'angle-cut',
  'arrival-count',
  'arrival-figures',
  'flat-cut',
  'deburr',
  'rinse',
  'intake',
  'bolt-seats',
  'bolt-fit',
  'bolt-reach',
  'dowel-fit',
  'seat-after',
  'seat-work',
  'blend',
  'heights',
  'springs',
  'rocker',
  'cam',
  'trial-fit',
  'finished',
  'ptv',
  'wash-out',
  'assemble',
  'leak',
  'wrap',
  'final',
  'hand-over',
] as const
export type StockStepId = (typeof stepIds)[number]
/** A step that the shop added. */
export type OwnStepId = `own-${number}`
export type StepId = StockStepId | OwnStepId

/**
 * A line of ordered work. A step id orders that step; flow runs are ordered by their place in the job, since they recur.
 * `valves` says that valves are renewed (it orders no step of its own but makes others follow).
 */
export const flowOccurrences = ['before', 'after-port', 'after-cut', 'after'] as const
export type FlowOccurrence = (typeof flowOccurrences)[number]
export type WorkId = Exclude<StepId, 'flow'> | `flow-${FlowOccurrence}` | 'valves'

export const presets = ['refresh', 'cut-to-size', 'bought-in', 'port-and-flow', 'seat-or-guide'] as const
export type Preset = (typeof presets)[number]

/** A step recurs by occurrence (flow runs) and by outside order (arrivals). `occurrence` is '' for a step that does not recur. */
export type StepKey = {
  readonly stepId: StepId
  readonly occurrence: string
  readonly orderId: string | null
}

export const isOwnStep = (id: string): id is OwnStepId => /^own-[1-9]\d{0,3}$/.test(id)

/** A step that stands from the start, or has the form of one that the shop added. */
export const isStepId = (id: string): id is StepId => (stepIds as readonly string[]).includes(id) || isOwnStep(id)

/** A line of ordered work, by the form of its id. */
export const isWorkId = (id: string): id is WorkId =>
  id === 'valves' ||
  (isStepId(id) && id !== 'flow') ||
  flowOccurrences.some((occurrence) => id === `flow-${occurrence}`)
