import { pictureResponse } from '@/app/api/picture-response'
import { seeLogo } from '@/lib/use-cases/shop/see-logo'
import { requireActor } from '@/lib/web/require-actor'

type Context = { params: Promise<{ sha256: string }> }

/** The shop's logo as it prints; by its content, so that another one is not shown from the browser's memory. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { sha256 } = await params
  return pictureResponse({
    type: 'image/png',
    name: 'logo.png',
    see: async () => seeLogo(await requireActor(), sha256),
  })
}
