import NextAuth from 'next-auth'
import { authOptions } from '@/lib/web/auth-options'

type Context = { params: Promise<{ nextauth: string[] }> }
type Handler = (request: Request, context: Context) => Promise<Response>

/** Made at the first request, not at build time: the secret belongs to the data folder. */
const handler: Handler = (request, context) => (NextAuth(authOptions()) as Handler)(request, context)

export { handler as GET, handler as POST }
