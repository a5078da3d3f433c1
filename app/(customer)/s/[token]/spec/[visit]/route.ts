import { answer } from '@/app/api/papers/paper-response'
import { specByLink } from '@/lib/use-cases/links/see-by-link'
import { askedFrom } from '@/lib/web/asked-from'
import { refuseTooMany } from '@/lib/web/throttle'

type Context = { params: Promise<{ token: string; visit: string }> }

/** The paper of one head, for whoever holds the link to its job. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { token, visit } = await params
  return answer(
    request,
    async () => {
      await refuseTooMany('link', await askedFrom())
      return specByLink(token, visit, new Date())
    },
    true,
  )
}
