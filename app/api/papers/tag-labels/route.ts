import { printLabelsOfTags } from '@/lib/use-cases/papers/print-labels'
import { paperFor } from '../paper-response'
import { labelsAsked } from './labels-asked'

/** Labels of heads of any jobs, each named by its tag. */
export const GET = (request: Request): Promise<Response> =>
  paperFor(request, (actor) => printLabelsOfTags(actor, labelsAsked(new URL(request.url).searchParams), new Date()))
