import { pictureResponse } from '@/app/api/picture-response'
import { seeLogoByLink } from '@/lib/use-cases/shop/see-logo'
import { askedFrom } from '@/lib/web/asked-from'
import { refuseTooMany } from '@/lib/web/throttle'

type Context = { params: Promise<{ token: string }> }

/** The shop's logo, for whoever holds a link to a job of it. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { token } = await params
  return pictureResponse({
    type: 'image/png',
    name: 'logo.png',
    see: async () => {
      await refuseTooMany('link', await askedFrom())
      return seeLogoByLink(token, new Date())
    },
  })
}
