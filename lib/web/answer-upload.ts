import { createHash } from 'node:crypto'
import type { z } from 'zod'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError, type Result } from '@/lib/core/errors'
import type { Moment } from '@/lib/data/write'
import { runAction } from './define-action'
import { headersOf, refusalOf, statusOf } from './error-to-response'
import { readUpload } from './read-upload'
import { requireActor } from './require-actor'
import { refuseForeignOrigin } from './same-origin'
import { refuseTooMany } from './throttle'

type WithHash = { readonly sha256: string }

export type Upload<Input extends WithHash, T> = {
  /** Makes two uploads' contents differ, as an action's name does. */
  readonly name: string
  /** Of the words that come with the file and of its hash, by which the same operation is known again. */
  readonly schema: z.ZodType<Input>
  readonly mostBytes: number
  /** What to do about a file that is too large, and about a form without one. */
  readonly advice: { readonly tooLarge: string; readonly noFile: string }
  readonly act: (actor: Actor, input: Input & { readonly bytes: Uint8Array }, moment: Moment) => Promise<T>
}

/**
 * A picture comes up by a route and not by an action, so that its progress shows and its size is looked at before it is
 * read. It answers as an action does.
 */
export async function answerUpload<Input extends WithHash, T>(
  request: Request,
  upload: Upload<Input, T>,
): Promise<Response> {
  const result = await takeIn(request, upload)
  const status = result.ok ? 200 : statusOf(result.refusal)
  const more = result.ok ? {} : headersOf(result.refusal)
  return Response.json(result, { status, headers: { 'Cache-Control': 'no-store', ...more } })
}

async function takeIn<Input extends WithHash, T>(
  request: Request,
  { name, schema, mostBytes, advice, act }: Upload<Input, T>,
): Promise<Result<T>> {
  try {
    refuseForeignOrigin(request)
    const actor = await requireActor()
    await refuseTooMany('picture', actor.personId)
    const form = await readUpload(request, mostBytes, advice.tooLarge)
    const bytes = await fileOf(form, advice.noFile)
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    const sent = { op: form.get('op') as string, input: { ...wordsOf(form), sha256 } }
    return await runAction(name, schema, sent, (input, moment) => act(actor, { ...input, bytes }, moment))
  } catch (error) {
    return { ok: false, refusal: refusalOf(error) }
  }
}

const wordsOf = (form: FormData): Record<string, unknown> =>
  Object.fromEntries([...form].filter(([, value]) => typeof value === 'string'))

async function fileOf(form: FormData, noFile: string): Promise<Uint8Array> {
  const file = form.get('file')
  if (file instanceof File) return new Uint8Array(await file.arrayBuffer())
  throw new RefusedError({ code: 'invalid', message: noFile })
}
