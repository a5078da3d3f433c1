import { z } from 'zod'
import { requiredText, words } from './figure'
import { workId } from './job'
import { optionalAmount, taxChoice } from './money'
import { text } from './text'

const id = text().min(1).max(64)
const version = z.number().int().positive()

/** What the customer is asked about a finding: the price and its tax, the work that a yes adds, and how it was asked. */
const askedFields = {
  findingId: id,
  version,
  price: optionalAmount,
  tax: taxChoice,
  addsWork: z.array(workId).max(20),
  how: words(120),
}
export const askFindingSchema = z.object(askedFields)
export type AskFindingInput = z.output<typeof askFindingSchema>

export const answerFindingSchema = z.object({
  ...askedFields,
  answer: z.enum(['yes', 'no'], 'Choose yes or no.'),
  answeredBy: requiredText('Enter who answered.', 120),
})
/** Another answer in the place of the one that stands, with why. */
export const changeAnswerSchema = answerFindingSchema.extend({
  reason: requiredText('Enter why the answer changes.', 300),
})
export type ChangeAnswerInput = z.output<typeof changeAnswerSchema>
export type AnswerFindingForm = z.input<typeof answerFindingSchema>
export type AnswerFindingInput = z.output<typeof answerFindingSchema>
