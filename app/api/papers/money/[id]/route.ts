import { printMoneyPaper } from '@/lib/use-cases/money/print-money-paper'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ id: string }> }

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id } = await params
  return paperFor(request, (actor) => printMoneyPaper(actor, id))
}
