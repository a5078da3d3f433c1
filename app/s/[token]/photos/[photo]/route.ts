import { answerPicture, sizeOf } from '@/app/api/photos/picture-response'
import { RefusedError } from '@/lib/core/errors'
import { seePictureByLink } from '@/lib/use-cases/photos/see-photos'
import { useAllowed as isAllowed } from '@/lib/web/throttle'

type Context = { params: Promise<{ token: string; photo: string }> }

/** A photo of what was found, for whoever holds the link to its job. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { token, photo } = await params
  return answerPicture(photo, async (photoId) => {
    if (!(await isAllowed('link photo'))) {
      throw new RefusedError({
        code: 'too-many',
        message: 'Too many at once. Wait a minute, then try again.',
      })
    }
    return seePictureByLink(token, photoId, sizeOf(request), new Date())
  })
}
