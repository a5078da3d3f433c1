import { printTagLabels } from '@/lib/use-cases/papers/print-papers'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ number: string }> }

export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { number } = await params
  return paperFor((actor) => printTagLabels(actor, number, new Date()))
}
