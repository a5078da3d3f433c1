import { chooseLogoSchema, mostLogoBytes } from '@/lib/schemas/logo'
import { chooseLogo } from '@/lib/use-cases/shop/choose-logo'
import { answerUpload } from '@/lib/web/answer-upload'

export const dynamic = 'force-dynamic'

const advice = {
  tooLarge: 'Save the picture smaller and choose it again.',
  noFile: 'There was no picture in it. Choose it again.',
}

export const POST = (request: Request): Promise<Response> =>
  answerUpload(request, {
    name: 'chooseLogo',
    schema: chooseLogoSchema,
    mostBytes: mostLogoBytes,
    advice,
    act: (actor, { sha256: _sha256, ...input }, moment) => chooseLogo(actor, input, moment),
  })
