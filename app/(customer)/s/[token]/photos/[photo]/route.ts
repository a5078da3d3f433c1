import { answerPicture, sizeOf } from '@/app/api/photos/photo-response'
import { seePictureByLink } from '@/lib/use-cases/photos/see-photos'
import { askedFrom } from '@/lib/web/asked-from'
import { refuseTooMany } from '@/lib/web/throttle'

type Context = { params: Promise<{ token: string; photo: string }> }

/** A photo of what was found, for whoever holds the link to its job. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { token, photo } = await params
  return answerPicture(photo, async (photoId) => {
    await refuseTooMany('link', await askedFrom())
    return seePictureByLink(token, photoId, sizeOf(request), new Date())
  })
}
