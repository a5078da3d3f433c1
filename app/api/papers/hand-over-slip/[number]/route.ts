import { printHandOverSlip } from '@/lib/use-cases/papers/print-hand-over-slip'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ number: string }> }

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { number } = await params
  return paperFor(request, (actor) => printHandOverSlip(actor, number, new Date()))
}
