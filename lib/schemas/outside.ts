import { z } from 'zod'
import { requiredText, optionalDay, optionalFigure, words } from './figure'
import { optionalAmount } from './money'
import { stepIdSchema } from './step'
import { text } from './text'

const version = z.number().int()
const order = { orderId: z.uuid(), version }

/** Who pays for work that is done again. */
export const payers = ['vendor', 'shop', 'customer'] as const
const payer = z.enum(payers, 'Choose who pays for the rework.')

/** What one head of the order is to have done; empty figures: what is left of the plan's angle part, flat part in house. */
const headToSend = z.object({
  visitId: z.uuid(),
  angleIn: optionalFigure('cutDepth'),
  flatIn: optionalFigure('cutDepth'),
  comesWith: words(300),
})

export const sendOutsideSchema = z
  .object({
    vendorId: z.uuid('Pick a vendor.'),
    scope: z.array(stepIdSchema).min(1, 'Choose what the vendor does.'),
    heads: z.array(headToSend).min(1, 'Pick at least one head.').max(40),
    finishesToSize: z.boolean(),
    instructions: words(1000),
    freight: words(100),
    tracking: words(100),
    promisedOn: optionalDay,
    /** The order whose work this one does again, and who pays; '' where it is none. */
    redoOfId: z.union([z.literal(''), z.uuid()]).default(''),
    redoCost: z.union([z.literal(''), payer]).default(''),
    /** Why an angle cut goes out that the customer has not accepted: the owner's word; '' where it is accepted. */
    unacceptedWhy: words(300).default(''),
  })
  .refine((input) => input.redoOfId === '' || input.redoCost !== '', {
    path: ['redoCost'],
    message: 'Choose who pays for the rework.',
  })

export const repromiseSchema = z.object({
  ...order,
  promisedOn: text().regex(/^\d{4}-\d{2}-\d{2}$/, 'Pick a day.'),
  note: words(300),
})

export const acceptOrderSchema = z.object({ ...order, promisedOn: optionalDay, note: words(300) })

export const changeOrderSchema = z.object({
  ...order,
  freight: words(100),
  tracking: words(100),
  returnTracking: words(100),
})

export const noteOutsideCostSchema = z.object({ ...order, cost: optionalAmount, freightCost: optionalAmount })

const headThatCame = z
  .object({
    visitId: z.uuid(),
    confirmed: z.array(stepIdSchema),
    seatsIn: z.boolean(),
    marksTyped: words(300),
    marksRead: words(300),
    /** Why it is not taken as it came; '': it is. */
    rejectedWhy: words(300).default(''),
    redoCost: z.union([z.literal(''), payer]).default(''),
  })
  .refine((head) => head.rejectedWhy === '' || head.redoCost !== '', {
    path: ['redoCost'],
    message: 'Choose who pays for the rework.',
  })

export const receiveOutsideSchema = z.object({
  orderId: z.uuid(),
  heads: z.array(headThatCame).min(1, 'Pick the heads that came back.').max(40),
})

export const rejectOutsideSchema = z.object({
  orderId: z.uuid(),
  visitId: z.uuid(),
  why: requiredText('Enter what is wrong with it.', 300),
  redoCost: payer,
})

/** Which of two ways a vendor's marks were meant: by its place among them, and the marks as they stood on the page. */
export const chooseMarksSchema = z.object({
  orderId: z.uuid(),
  visitId: z.uuid(),
  typed: text().max(300),
  way: z.number().int().min(0).max(1),
})

/** A scope step is seen done after the arrival, or an earlier confirmation is taken back, with the reason. */
export const confirmOutsideSchema = z
  .object({
    orderId: z.uuid(),
    visitId: z.uuid(),
    stepId: stepIdSchema,
    confirmed: z.boolean(),
    reason: words(300),
  })
  .refine((input) => input.confirmed || input.reason !== '', {
    path: ['reason'],
    message: 'Enter why the confirmation is taken back.',
  })

export const leaveMarginSchema = z.object({ pairId: z.uuid(), seenVersion: z.number().int().min(1) })
