import { z } from 'zod'
import type { CutCaution } from '@/lib/core/cut/cautions'
import { cornerNames } from '@/lib/core/straightness/corners-fit'

const text = z.string()
const figure = z.number()
const port = z.enum(['intake', 'exhaust'])
const side = z.enum(['under', 'over'])

export const seatGround = z.discriminatedUnion('by', [
  z.object({ by: z.literal('read'), valve: text }),
  z.object({ by: z.literal('like'), valve: text, like: text }),
  z.object({ by: z.literal('record'), valve: text }),
])

const stand = z.object({ ground: seatGround, notRead: figure, tag: text, notKnownOf: z.array(text) })

const coded = <Code extends string, Shape extends z.ZodRawShape>(code: Code, shape: Shape) =>
  z.object({ code: z.literal(code), ...shape })

const caution = z.discriminatedUnion('code', [
  coded('valve-past', {
    ...{ tag: text, valve: text, side, afterIn: figure, limitIn: figure, count: figure },
    sinkMoreIn: figure.nullable(),
  }),
  coded('injector-past', { tag: text, chamber: text, side, afterIn: figure, limitIn: figure }),
  coded('valves-not-known', { tag: text, needs: text }),
  coded('valves-not-read', { tag: text }),
  coded('no-maker-limits', { tag: text }),
  coded('own-depth', { tag: text, depthIn: figure }),
  coded('no-deeper', {
    ...{ tag: text, depthIn: figure, point: text },
    boundBy: z.enum(['recession', 'protrusion', 'thickness']),
  }),
  coded('steep', { angleDeg: figure }),
  coded('gone-differs', { tag: text, corner: z.enum(cornerNames), byCornersIn: figure, bySumIn: figure }),
  coded('thickness-not-known', { tags: z.array(text), leastIn: figure.nullable(), rateProven: z.boolean() }),
  coded('land-place-not-known', {}),
  coded('uneven', {
    ...{ targetCc: figure, toleranceCc: figure },
    chambers: z.array(z.object({ tag: text, chamber: figure, finishedCc: figure })),
  }),
  coded('piston-to-valve', { port, leftIn: figure, leastIn: figure }),
  coded('seat-cut-through', { port, byIn: figure, stand }),
  coded('seat-near', { port, hold: z.boolean(), marginIn: figure, leastIn: figure, stand }),
  coded('bolts-bottom', { byIn: figure }),
  coded('dowels-bottom', {}),
  coded('all-outside', {}),
  coded('opening', {}),
  coded('as-said', { words: text }),
]) satisfies z.ZodType<CutCaution>

export const cautions = z.array(caution)

/** Of rows from before cautions had codes: words, which stay as they were said. */
export const cautionsAsSaid = z.array(text.transform((words): CutCaution => ({ code: 'as-said', words })))
