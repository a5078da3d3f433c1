import { z } from 'zod'
import { pictureResponse } from '@/app/api/picture-response'
import { RefusedError } from '@/lib/core/errors'
import type { PhotoSize } from '@/lib/use-cases/photos/see-photos'

/** `?size=small` is for lists. */
export const sizeOf = (request: Request): PhotoSize =>
  new URL(request.url).searchParams.get('size') === 'small' ? 'small' : 'full'

/** A picture, under a name that says nothing; `see` gets an id only where the text can be one. */
export async function answerPicture(
  id: string,
  see: (id: string) => Promise<Uint8Array<ArrayBuffer>>,
): Promise<Response> {
  const known = z.uuid().safeParse(id)
  return pictureResponse({
    type: 'image/jpeg',
    name: `photo-${known.data?.slice(-12)}.jpg`,
    see: async () => {
      if (known.success) return see(known.data)
      throw new RefusedError({ code: 'not-found', message: 'There is no such photo here.' })
    },
  })
}
