import { z } from 'zod'
import { isDay } from '@/lib/core/shop/calendar'
import { requiredText, optionalDay, words } from './figure'
import { optionalTag } from './job'
import { optionalAmount, quantity } from './money'
import { text } from './text'

const day = optionalDay.refine((value) => value === null || isDay(value), 'This day does not exist. Check the date.')
const id = z.uuid()
const version = z.number().int()

/** Heads of one kind: which, for which visits. Without a variant on record it says in words what is bought. */
const headLine = z
  .object({
    variantId: z.union([z.literal(''), id]),
    what: words(200),
    /** None: the line is not on this order. */
    visitIds: z.array(id).max(16),
    cost: optionalAmount,
  })
  .refine((line) => line.visitIds.length === 0 || line.variantId !== '' || line.what !== '', {
    path: ['what'],
    message: 'Enter what is bought, or pick how it is bought.',
  })

/** How many; '' → none of it. */
const optionalPieces = z.union([z.literal('').transform(() => 0), quantity], 'Enter a whole number, or leave it empty.')

const partLine = z
  .object({
    what: words(200),
    quantity: optionalPieces,
    /** The parts wait that it ends; '': for the shelf. */
    waitId: z.union([z.literal(''), id]),
    cost: optionalAmount,
  })
  .refine((line) => line.quantity === 0 || line.what !== '', {
    path: ['what'],
    message: 'Enter what is bought.',
  })

export const orderSupplySchema = z
  .object({
    vendorId: z.uuid('Pick a supplier.'),
    jobId: id.nullable(),
    promisedOn: day,
    note: words(500),
    heads: z.array(headLine).max(16),
    parts: z.array(partLine).max(40),
  })
  .transform(({ heads, parts, ...order }) => ({
    ...order,
    heads: heads.filter((line) => line.visitIds.length > 0),
    parts: parts.filter((line) => line.quantity > 0),
  }))
  .refine((order) => order.heads.length + order.parts.length > 0, {
    path: ['note'],
    message: 'This order is empty. Pick a head, or enter how many of a part.',
  })
export type OrderSupplyForm = z.input<typeof orderSupplySchema>
export type OrderSupply = z.output<typeof orderSupplySchema>

export const receiveSupplySchema = z
  .object({
    orderId: id,
    version,
    /** Heads that came, each with the number that is hung on it; empty: the next of the series. */
    heads: z.array(z.object({ visitId: id, tag: optionalTag })).max(16),
    /** How many came of each line of parts. */
    parts: z.array(z.object({ lineId: id, quantity: optionalPieces })).max(40),
  })
  .transform(({ parts, ...arrival }) => ({ ...arrival, parts: parts.filter((part) => part.quantity > 0) }))
  .refine((arrival) => arrival.heads.length + arrival.parts.length > 0, {
    path: ['heads'],
    message: 'Pick what arrived.',
  })
export type ReceiveSupply = z.output<typeof receiveSupplySchema>

export const repromiseSupplySchema = z.object({
  orderId: id,
  version,
  promisedOn: text().refine(isDay, 'Pick a day.'),
  note: words(300),
})
export type RepromiseSupply = z.output<typeof repromiseSupplySchema>

export const endSupplySchema = z.object({
  orderId: id,
  version,
  reason: requiredText('Enter why the remainder is cancelled.', 300),
})
export type EndSupply = z.output<typeof endSupplySchema>
