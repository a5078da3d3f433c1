import { health } from '@/lib/use-cases/shop/health'
import { faultSentence } from '@/lib/words/faults'

export const dynamic = 'force-dynamic'

const headers = { 'Cache-Control': 'no-store' }

/** For whoever watches over the server, and for a page that could not be shown: what is wrong, in a word and in words. */
export async function GET() {
  const found = await health(new Date())
  if (found.status === 'ok') return Response.json(found, { headers })
  return Response.json({ ...found, message: faultSentence(found.fault) }, { status: 503, headers })
}
