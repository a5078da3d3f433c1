import { addPhotoSchema } from '@/lib/schemas/photo'
import { mostUploadBytes } from '@/lib/schemas/photo-limits'
import { addPhoto } from '@/lib/use-cases/photos/add-photo'
import { answerUpload } from '@/lib/web/answer-upload'

export const dynamic = 'force-dynamic'

const advice = {
  tooLarge: 'Take the photo again with a smaller setting.',
  noFile: 'There was no picture in it. Take the photo again.',
}

export const POST = (request: Request): Promise<Response> =>
  answerUpload(request, {
    name: 'addPhoto',
    schema: addPhotoSchema,
    mostBytes: mostUploadBytes,
    advice,
    act: (actor, { sha256: _sha256, ...input }, moment) => addPhoto(actor, input, moment),
  })
