import { z } from 'zod'
import { RefusedError } from '@/lib/core/errors'
import type { LabelsAsked } from '@/lib/use-cases/papers/print-labels'

/** More than a shop has heads: what asks for more is no person at a counter. */
const mostLabels = 300

const firstText = z.string().regex(/^\d{1,3}$/)
const tagTexts = z.array(z.string().max(200)).max(mostLabels)

/**
 * What an address asks for. `first`: the first free place on a sheet of labels; without it, or with `single`, a page a
 * label. `tag`: one head each.
 */
export function labelsAsked(query: URLSearchParams): LabelsAsked {
  const tags = read(tagTexts, query.getAll('tag'), `Print ${mostLabels} labels at the most at a time.`)
  if (query.has('single') || !query.has('first')) return { first: null, tags }
  const first = read(firstText, query.get('first'), 'Say the first free label as a number, such as 1.')
  return { first: Number(first), tags }
}

function read<T>(schema: z.ZodType<T>, given: unknown, message: string): T {
  const parsed = schema.safeParse(given)
  if (!parsed.success) throw new RefusedError({ code: 'invalid', message })
  return parsed.data
}
