import { notFound } from 'next/navigation'
import type { z } from 'zod'
import type { Moment } from '@/lib/data/write'
import { askedFrom } from './asked-from'
import { runAction, type ServerAction } from './define-action'
import { refuseTooMany } from './throttle'

type WithToken = { readonly token: string }

/**
 * The way in for a change by whoever holds a customer's link: the link's token stands for a signed-in person, and is
 * counted as the pages of links are. What it does not open is a page that is not there, as for the page itself.
 */
export function defineLinkAction<Form, Input extends WithToken, T>(
  name: string,
  schema: z.ZodType<Input, Form>,
  useCase: (link: WithToken, input: Omit<Input, 'token'>, moment: Moment) => Promise<T>,
): ServerAction<Form, T> {
  return async (sent) => {
    const result = await runAction(name, schema, sent, async ({ token, ...input }, moment) => {
      await refuseTooMany('link', await askedFrom())
      return useCase({ token }, input, moment)
    })
    if (!result.ok && result.refusal.code === 'not-found') notFound()
    return result
  }
}
