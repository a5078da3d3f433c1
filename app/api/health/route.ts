import { db } from '@/lib/data/db'

export const dynamic = 'force-dynamic'

export async function GET() {
  try {
    const client = await db()
    await client.shop.count()
    return Response.json({ status: 'ok' }, { headers: { 'Cache-Control': 'no-store' } })
  } catch {
    return Response.json({ status: 'down' }, { status: 503, headers: { 'Cache-Control': 'no-store' } })
  }
}
