import { printClaimTicket } from '@/lib/use-cases/papers/print-claim-ticket'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ number: string }> }

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { number } = await params
  return paperFor(request, (actor) => printClaimTicket(actor, number, new Date()))
}
