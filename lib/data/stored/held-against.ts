import { z } from 'zod'
import type { HeldAgainst } from '@/lib/core/expected/types'
import { storedObject, type Fields } from './stored-json'

/** What a confirmed reading was held against, in the core's unit of its kind, as it was that day. */
export type StoredHeldAgainst = {
  /** Null: only a span was expected. */
  readonly expected: number | null
  readonly low: number | null
  readonly high: number | null
  /** The limit that it broke. */
  readonly why: HeldAgainst
  /** Of several one was off: their points; empty when it was this one. */
  readonly oneOf: readonly string[]
}

const plain = [
  'before',
  'other-chambers',
  'mate',
  'nominal-less-gone',
  'other-corners',
  'record-less-gone',
  'other-valves',
  'other-injectors',
  'advised-stop',
  'plan',
  'thickness-left',
  'last-total',
  'limit',
  'lifts-beside',
  'run-before',
  'wanted',
] as const

const why = z.discriminatedUnion('code', [
  z.object({ code: z.literal('before-less-cut'), before: z.number(), depthIn: z.number() }),
  z.object({ code: z.literal('before-and-cut'), before: z.number(), depthIn: z.number() }),
  z.object({ code: z.literal('new-less-cut'), before: z.number(), depthIn: z.number() }),
  z.object({ code: z.literal('lift-below'), liftIn: z.number() }),
  z.object({ code: z.literal('earlier-visit'), goneIn: z.number(), job: z.string() }),
  ...plain.map((code) => z.object({ code: z.literal(code) })),
]) as unknown as z.ZodType<HeldAgainst>

const heldAgainst = z.object({
  expected: z.number().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  why,
  oneOf: z.array(z.string()),
} satisfies Fields<StoredHeldAgainst>) satisfies z.ZodType<StoredHeldAgainst>

export const storedHeldAgainst = storedObject<StoredHeldAgainst>('Reading.heldAgainst', heldAgainst)
