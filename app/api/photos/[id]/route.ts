import { seePicture } from '@/lib/use-cases/photos/see-photos'
import { requireActor } from '@/lib/web/require-actor'
import { answerPicture, sizeOf } from '../photo-response'

type Context = { params: Promise<{ id: string }> }

/** A photo, for somebody signed in. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id } = await params
  return answerPicture(id, async (photoId) => seePicture(await requireActor(), photoId, sizeOf(request)))
}
