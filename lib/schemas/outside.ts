import { z } from 'zod'
import { stepIds } from '@/lib/core/route/types'
import { optionalDay, optionalFigure, words } from './figure'

/** What one head of the order is to have done; empty figures: as planned, angle part outside and flat part in house. */
const headToSend = z.object({
  visitId: z.uuid(),
  angleIn: optionalFigure('cutDepth'),
  flatIn: optionalFigure('cutDepth'),
  comesWith: words(300),
})

export const sendOutsideSchema = z.object({
  vendorId: z.uuid('Pick a vendor.'),
  scope: z.array(z.enum(stepIds)).min(1, 'Say what the vendor does.'),
  heads: z.array(headToSend).min(1, 'Pick at least one head.').max(40),
  finishesToSize: z.boolean(),
  instructions: words(1000),
  freight: words(100),
  tracking: words(100),
  promisedOn: optionalDay,
})

export const repromiseSchema = z.object({
  orderId: z.uuid(),
  version: z.number().int(),
  promisedOn: z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'Pick a day.'),
  note: words(300),
})

export const receiveOutsideSchema = z.object({
  orderId: z.uuid(),
  heads: z
    .array(
      z.object({
        visitId: z.uuid(),
        confirmed: z.array(z.enum(stepIds)),
        seatsIn: z.boolean(),
        marksTyped: words(300),
        marksRead: words(300),
      }),
    )
    .min(1, 'Pick the heads that came back.')
    .max(40),
})
