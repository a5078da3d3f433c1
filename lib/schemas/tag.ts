import { z } from 'zod'
import { requiredText, words } from './figure'

const tagged = { headId: z.uuid(), version: z.number().int() }

export const changeTagSchema = z.object({
  ...tagged,
  /** As typed; the next of the series when it is left empty. */
  number: words(40),
  reason: requiredText('Enter why it gets another tag: lost, bent, reused.', 200),
})

export const takeOffTagSchema = z.object({ ...tagged, reason: words(200) })
