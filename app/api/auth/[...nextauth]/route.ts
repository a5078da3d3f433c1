import NextAuth from 'next-auth'
import { authOptions } from '@/lib/web/auth-options'
import { plainRefusal } from '@/lib/web/plain-page'
import { failedAnswer, withReason, type SignInAnswer } from '@/lib/web/sign-in-answer'
import { signInTrouble } from '@/lib/web/sign-in-trouble'

type Context = { params: Promise<{ nextauth: string[] }> }
type Handler = (request: Request, context: Context) => Promise<Response>

/** Made at the first request, not at build time: the secret belongs to the data folder. */
const handler: Handler = async (request, context) => {
  if (!(await isReadable(request))) return plainRefusal(400, 'invalid', 'This could not be read.')
  let refused: SignInAnswer | null = null
  const say = (answer: SignInAnswer) => {
    refused = answer
  }
  try {
    const response = await (NextAuth(authOptions(say)) as Handler)(request, context)
    return refused === null ? response : withReason(response, refused)
  } catch (error) {
    return failedAnswer(signInTrouble(error))
  }
}

/** The library reads JSON without asking whether it is any. */
const isReadable = async (request: Request): Promise<boolean> =>
  request.method !== 'POST' ||
  !(request.headers.get('content-type') ?? '').includes('json') ||
  request
    .clone()
    .json()
    .then(
      () => true,
      () => false,
    )

export { handler as GET, handler as POST }
