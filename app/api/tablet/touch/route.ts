import { errorResponse } from '@/lib/web/error-to-response'
import { touchTablet } from '@/lib/web/tablet-session'

export const dynamic = 'force-dynamic'

export async function POST(request: Request) {
  try {
    await touchTablet(request)
    return new Response(null, { status: 204 })
  } catch (error) {
    return errorResponse(error)
  }
}
