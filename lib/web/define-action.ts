import { createHash } from 'node:crypto'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { z } from 'zod'
import type { Actor } from '@/lib/core/access/roles'
import type { Refusal, Result } from '@/lib/core/errors'
import type { Moment } from '@/lib/data/write'
import { refusalOf } from './error-to-response'
import { refuseUnlessAsked, requireActor } from './require-actor'

const opId = z.uuid()

/** What a form sends: the operation's id, made in the browser, and what was typed. */
export type Sent<I> = { readonly op: string; readonly input: I }
export type ServerAction<I, T> = (sent: Sent<I>) => Promise<Result<T>>

const hashOf = (name: string, input: unknown): string =>
  createHash('sha256')
    .update(JSON.stringify([name, input]))
    .digest('hex')

const fieldErrors = (error: z.ZodError): Record<string, string> =>
  // The first message of a field counts.
  Object.fromEntries(error.issues.toReversed().map((issue) => [issue.path.join('.'), issue.message]))

/**
 * Parses what was sent, does it, and turns whatever stops it into words. `name` makes two actions' contents differ;
 * `contentOf`: what of the input makes it another deed, where that is not all of it.
 */
export async function runAction<S extends z.ZodType, T>(
  name: string,
  schema: S,
  sent: Sent<unknown>,
  act: (input: z.output<S>, moment: Moment) => Promise<T>,
  contentOf: (input: z.output<S>) => unknown = (input) => input,
): Promise<Result<T>> {
  try {
    const id = opId.safeParse(sent?.op)
    const input = schema.safeParse(sent?.input)
    if (!id.success)
      return {
        ok: false,
        refusal: { code: 'invalid', message: 'This page is out of date. Reload it and try again.' },
      }
    if (!input.success) {
      const fields = fieldErrors(input.error)
      const message = Object.values(fields)[0] ?? 'Check the form: a field is wrong.'
      return { ok: false, refusal: { code: 'invalid', message, fields } }
    }
    const moment = { now: new Date(), op: { id: id.data, hash: hashOf(name, contentOf(input.data)) } }
    const value = await act(input.data, moment)
    revalidatePath('/', 'layout')
    return { ok: true, value }
  } catch (error) {
    return { ok: false, refusal: refusalOf(error) }
  }
}

/** The page shows what is no longer so. A conflict that says itself what came between leaves the page as it was. */
const isPageStale = ({ code, theirs }: Refusal): boolean =>
  code === 'wrong-state' || code === 'not-on-route' || (code === 'conflict' && theirs?.seen === undefined)

/**
 * The only way in for a change by somebody signed in: find out who asks, parse, call the use case, map the error. Whether
 * they may is the use case's to say. The answer brings the page as it is after the change, rendered once: the page the
 * change was made on, or the one that `goTo` names.
 */
export function defineAction<S extends z.ZodType, T>(
  name: string,
  schema: S,
  useCase: (actor: Actor, input: z.output<S>, moment: Moment) => Promise<T>,
  goTo?: (value: T, input: z.output<S>) => string | undefined,
): ServerAction<z.input<S>, T> {
  return async (sent) => {
    let result: Result<T>
    let next: string | undefined
    try {
      const actor = await requireActor()
      await refuseUnlessAsked(name)
      result = await runAction(name, schema, sent, async (input, moment) => {
        const value = await useCase(actor, input, moment)
        next = goTo?.(value, input)
        return value
      })
    } catch (error) {
      result = { ok: false, refusal: refusalOf(error) }
    }
    if (!result.ok && isPageStale(result.refusal)) revalidatePath('/', 'layout')
    if (next !== undefined) redirect(next)
    return result
  }
}
