import { printOutsideSheet } from '@/lib/use-cases/papers/print-papers'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ order: string }> }

export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { order } = await params
  return paperFor((actor) => printOutsideSheet(actor, order, new Date()))
}
