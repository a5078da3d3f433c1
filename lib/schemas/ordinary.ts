import { z } from 'zod'
import { notTheseSchema } from './alike'
import { requiredText } from './figure'
import { bookedHead } from './job'
import { text } from './text'

const id = text().min(1).max(64)
const version = z.number().int().positive()
const reason = requiredText('Enter the reason.', 300)

export const cancelJobSchema = z.object({
  jobId: id,
  version,
  reason,
  /** Those on no invoice go with it. */
  removePrices: z.boolean(),
})
export type CancelJobInput = z.output<typeof cancelJobSchema>

export const takeOffHeadSchema = z.object({ jobId: id, visitId: id, reason })
export type TakeOffHeadInput = z.output<typeof takeOffHeadSchema>

/** `heads` holds the one: its fields have the names that they have at a booking. */
export const addHeadSchema = z.object({
  jobId: id,
  heads: z.array(bookedHead).length(1),
  reason,
  /** On record, like what is typed, and said to be others. */
  notThese: notTheseSchema,
})
export type AddHeadForm = z.input<typeof addHeadSchema>
export type AddHeadInput = z.output<typeof addHeadSchema>

export const undoHandOverSchema = z.object({ visitId: id, reason })
export type UndoHandOverInput = z.output<typeof undoHandOverSchema>
