import { printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { paperFor } from '../../paper-response'
import { labelsAsked } from '../labels-asked'

type Context = { params: Promise<{ number: string }> }

/** Labels of one job: of the heads that are named, or of all. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { number } = await params
  return paperFor(request, (actor) =>
    printTagLabels(actor, number, new Date(), labelsAsked(new URL(request.url).searchParams)),
  )
}
