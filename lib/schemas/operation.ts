import { z } from 'zod'
import { mostAtOnce } from './most-at-once'
import { text } from './text'

/** What can be done at a station without the network, and is sent when it is back. */
export const operationKinds = [
  'tick',
  'undo-tick',
  'record-readings',
  'start',
  'correct-reading',
  'finding',
  'hold',
  'parts-wait',
  'rack-place',
] as const
export type OperationKind = (typeof operationKinds)[number]

/**
 * A deed as a device keeps it: `id` is made there and stays, `version` is that of the kind's input, `takenAt` is by the
 * device's own clock.
 */
export const operationSchema = z.object({
  id: z.uuid(),
  kind: z.enum(operationKinds),
  version: z.number().int().min(1),
  personId: text().min(1).max(40),
  takenAt: z.iso.datetime(),
  input: z.looseObject({ visitId: z.uuid() }),
})
export type SentOperation = z.output<typeof operationSchema>

/** `sentAt`: by the same clock, so that a clock that is wrong does not make the times wrong. */
export const operationsSchema = z.object({
  sentAt: z.iso.datetime(),
  operations: z.array(operationSchema).min(1).max(mostAtOnce),
})
