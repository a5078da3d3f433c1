import { printReceipt } from '@/lib/use-cases/papers/print-receipt'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ number: string }> }

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { number } = await params
  return paperFor(request, (actor) => printReceipt(actor, number, new Date()))
}
