import { createHash } from 'node:crypto'
import { RefusedError, type Result } from '@/lib/core/errors'
import { addPhotoSchema, mostUploadBytes } from '@/lib/schemas/photo'
import { addPhoto, type AddedPhoto } from '@/lib/use-cases/photos/add-photo'
import { carryOut } from '@/lib/web/define-action'
import { refusalOf, statusOf } from '@/lib/web/error-to-response'
import { readUpload } from '@/lib/web/read-upload'
import { requireActor } from '@/lib/web/require-actor'
import { refuseForeignOrigin } from '@/lib/web/same-origin'
import { uploadAllowed } from '@/lib/web/throttle'

export const dynamic = 'force-dynamic'

/**
 * A photo comes up here and not by an action, so that its progress shows and its size is looked at before it is read.
 * It answers as an action does.
 */
export async function POST(request: Request): Promise<Response> {
  const result = await add(request)
  const status = result.ok ? 200 : statusOf(result.refusal)
  return Response.json(result, { status, headers: { 'Cache-Control': 'no-store' } })
}

async function add(request: Request): Promise<Result<AddedPhoto>> {
  try {
    refuseForeignOrigin(request)
    const actor = await requireActor()
    if (!(await uploadAllowed(actor.personId))) {
      const message = 'Too many photos at once. Wait a minute, then send it again.'
      throw new RefusedError({ code: 'too-many', message })
    }
    const form = await readUpload(request, mostUploadBytes)
    const bytes = await fileOf(form)
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    const sent = { op: form.get('op') as string, input: { ...wordsOf(form), sha256 } }
    return await carryOut('addPhoto', addPhotoSchema, sent, ({ sha256: _sha256, ...input }, moment) =>
      addPhoto(actor, { ...input, bytes }, moment),
    )
  } catch (error) {
    return { ok: false, refusal: refusalOf(error) }
  }
}

const wordsOf = (form: FormData): Record<string, unknown> =>
  Object.fromEntries([...form].filter(([, value]) => typeof value === 'string'))

async function fileOf(form: FormData): Promise<Uint8Array> {
  const file = form.get('file')
  if (file instanceof File) return new Uint8Array(await file.arrayBuffer())
  throw new RefusedError({ code: 'invalid', message: 'There was no picture in it. Take the photo again.' })
}
