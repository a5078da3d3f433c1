import { z } from 'zod'
import { requiredText } from './figure'
import { text } from './text'

/**
 * The customer's own answer to a finding. Price and work are the shop's to say: only which version of them was read goes
 * with it. Apart from the counter's schemas, so that a phone loads none of the shop's lists.
 */
export const answerByLinkSchema = z.object({
  token: text().max(200),
  findingId: text().max(64),
  version: z.number().int().positive(),
  answer: z.enum(['yes', 'no'], 'Choose yes or no.'),
  answeredBy: requiredText('Enter your name.', 120),
})
export type AnswerByLinkInput = Omit<z.output<typeof answerByLinkSchema>, 'token'>
