import { z } from 'zod'
import { RefusedError } from '@/lib/core/errors'
import type { PhotoSize } from '@/lib/use-cases/photos/see-photos'
import { errorResponse } from '@/lib/web/error-to-response'

const guarded = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Content-Security-Policy': "default-src 'none'; sandbox",
}

/** `?size=small` is for lists. */
export const sizeOf = (request: Request): PhotoSize =>
  new URL(request.url).searchParams.get('size') === 'small' ? 'small' : 'full'

/** A picture, under a name that says nothing; `see` gets an id only where the text can be one. */
export async function answerPicture(
  id: string,
  see: (id: string) => Promise<Uint8Array<ArrayBuffer>>,
): Promise<Response> {
  try {
    const known = z.uuid().safeParse(id)
    if (!known.success) throw new RefusedError({ code: 'not-found', message: 'There is no such photo here.' })
    return new Response(await see(known.data), {
      headers: {
        ...guarded,
        'Content-Type': 'image/jpeg',
        'Content-Disposition': `inline; filename="photo-${known.data.slice(-12)}.jpg"`,
      },
    })
  } catch (error) {
    return errorResponse(error)
  }
}
