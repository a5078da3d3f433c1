import { printEstimate } from '@/lib/use-cases/cut-bench/print-estimate'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ id: string }> }

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id } = await params
  return paperFor(request, (actor) => printEstimate(actor, id, new Date()))
}
