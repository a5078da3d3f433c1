import { z } from 'zod'
import { requiredText } from './figure'
import { bookedHead } from './job'

const id = z.string().min(1).max(64)
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

export const addHeadSchema = z.object({ jobId: id, head: bookedHead, reason })
export type AddHeadInput = z.output<typeof addHeadSchema>

export const undoHandOverSchema = z.object({ visitId: id, reason })
export type UndoHandOverInput = z.output<typeof undoHandOverSchema>
