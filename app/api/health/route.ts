import { answers } from '@/lib/use-cases/shop/answers'

export const dynamic = 'force-dynamic'

const headers = { 'Cache-Control': 'no-store' }

export async function GET() {
  return (await answers())
    ? Response.json({ status: 'ok' }, { headers })
    : Response.json({ status: 'down' }, { status: 503, headers })
}
