import { z } from 'zod'
import { words } from './figure'
import { text } from './text'

const id = text().min(1).max(64)

/** What a booking names that may be on record already. `id` and `headId` are '' for what was not picked. */
export const alikeSchema = z.object({
  customer: z.object({ id: text().max(64), name: words(120), phone: words(60), email: words(200) }),
  heads: z
    .array(z.object({ headId: text().max(64), stamp: words(60), tag: words(60) }))
    .max(16)
    .default([]),
})
export type AlikeInput = z.output<typeof alikeSchema>

/** Those of which somebody said "no, another one": a part of the booking, so that the answer is on record with it. */
export const notTheseSchema = z
  .object({ customers: z.array(id).max(60), heads: z.array(id).max(60) })
  .default({ customers: [], heads: [] })
export type NotThese = z.output<typeof notTheseSchema>
