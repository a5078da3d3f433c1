import { z } from 'zod'
import { isWorkId, type WorkId } from '@/lib/core/route/step-ids'
import { text } from './text'

const yes = z.enum(['0', '1']).transform((text) => text === '1')

/** What the proposed promise hangs on, as it stands in the address. */
export const proposePromiseSchema = z.object({
  source: z.enum(['customer', 'bought', 'bought-cut']),
  used: yes,
  cameAssembled: yes,
  overheated: yes,
  urgent: yes,
  ordered: text()
    .max(2000)
    .transform((text) => text.split(',').filter((id): id is WorkId => isWorkId(id))),
})
export type ProposePromise = z.output<typeof proposePromiseSchema>
export type ProposePromiseForm = z.input<typeof proposePromiseSchema>
