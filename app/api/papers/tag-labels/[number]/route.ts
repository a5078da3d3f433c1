import { z } from 'zod'
import { RefusedError } from '@/lib/core/errors'
import { printTagLabels } from '@/lib/use-cases/papers/print-papers'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ number: string }> }

/** `first`: the first free place on a sheet of labels; without it a page a label. `tag`: one head each, or all. */
const asked = z.object({
  first: z
    .string()
    .regex(/^\d{1,3}$/)
    .transform(Number)
    .nullable(),
  tags: z.array(z.string().max(20)).max(100),
})

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { number } = await params
  const query = new URL(request.url).searchParams
  const labels = asked.safeParse({ first: query.get('first'), tags: query.getAll('tag') })
  return paperFor(request, (actor) => {
    if (!labels.success) {
      throw new RefusedError({ code: 'invalid', message: 'Say the first free label as a number, such as 1.' })
    }
    return printTagLabels(actor, number, new Date(), labels.data)
  })
}
