import { z } from 'zod'
import { requiredText, words } from './figure'
import { stepIdSchema } from './step'
import { text } from './text'

const idOrNone = z
  .union([z.literal(''), z.uuid()])
  .default('')
  .transform((id) => (id === '' ? null : id))

/** Where a photo belongs; `stepId` is '' when it is of the head itself. `sha256` is of the file as it came up. */
export const addPhotoSchema = z.object({
  visitId: z.uuid(),
  stepId: z.union([z.literal(''), stepIdSchema]),
  occurrence: text().max(40).default(''),
  orderId: idOrNone,
  findingId: idOrNone,
  holdId: idOrNone,
  /** Of a finding or hold that the device had not sent yet when the photo was taken: the operation that makes it. */
  findingOp: idOrNone,
  holdOp: idOrNone,
  caption: words(200),
  sha256: text().regex(/^[0-9a-f]{64}$/),
})
export type AddPhotoForm = z.input<typeof addPhotoSchema>
export type AddPhotoInput = z.output<typeof addPhotoSchema>

export const withdrawPhotoSchema = z.object({
  photoId: z.uuid(),
  reason: requiredText('Enter why it is withdrawn.', 300),
})
export type WithdrawPhotoInput = z.output<typeof withdrawPhotoSchema>
