import { exportCustomers } from '@/lib/use-cases/customers/export-customers'
import { refusalOf, statusOf } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

const guarded = { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer', 'Cache-Control': 'no-store' }

/** All customers as a file; what goes wrong is said in words. */
export async function GET(): Promise<Response> {
  try {
    const { name, text } = await exportCustomers(await requireActor(), { now: new Date() })
    return new Response(text, {
      headers: {
        ...guarded,
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': `attachment; filename="${name}"`,
      },
    })
  } catch (error) {
    const refusal = refusalOf(error)
    const headers = { ...guarded, 'Content-Type': 'text/plain; charset=utf-8' }
    return new Response(refusal.message, { status: statusOf(refusal), headers })
  }
}
