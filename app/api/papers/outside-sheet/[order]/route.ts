import { printOutsideSheet } from '@/lib/use-cases/papers/print-papers'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ order: string }> }

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { order } = await params
  return paperFor(request, (actor) => printOutsideSheet(actor, order, new Date()))
}
