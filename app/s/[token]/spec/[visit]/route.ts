import { answer } from '@/app/api/papers/paper-response'
import { RefusedError } from '@/lib/core/errors'
import { specByLink } from '@/lib/use-cases/links/see-by-link'
import { useAllowed as isAllowed } from '@/lib/web/throttle'

type Context = { params: Promise<{ token: string; visit: string }> }

/** The paper of one head, for whoever holds the link to its job. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { token, visit } = await params
  return answer(
    request,
    async () => {
      if (!(await isAllowed('link'))) {
        throw new RefusedError({
          code: 'too-many',
          message: 'Too many at once. Wait a minute, then try again.',
        })
      }
      return specByLink(token, visit, new Date())
    },
    true,
  )
}
