import { z } from 'zod'
import { grants, roles } from '@/lib/core/access/roles'
import { requiredText } from './figure'
import { text } from './text'

export const personName = requiredText('Enter the name used in the shop.', 80)
export const signInName = text()
  .trim()
  .toLowerCase()
  .regex(/^[\p{L}\p{N}][\p{L}\p{N}._-]{0,39}$/u, 'Use letters, digits, dots and hyphens, no spaces.')
/** Length only: whether it is among the common ones is the server's to say. */
export const newPassword = text()
  .min(8, 'Use at least 8 characters; 15 or more are better.')
  .max(200, 'Use 200 characters at most.')

const rights = {
  roles: z.array(z.enum(roles)).min(1, 'Choose at least one role.'),
  grants: z.array(z.enum(grants)),
}
/** One row of a versioned record: zero rows changed means that somebody else was first. */
const expected = { personId: text(), version: z.number().int() }

export const addPersonSchema = z.object({
  name: personName,
  signIn: signInName,
  ...rights,
  /** '': they choose their own by a link. */
  password: z.union([z.literal(''), newPassword]),
})
export const changePersonSchema = z.object({ ...expected, name: personName, ...rights })
export const retirePersonSchema = z.object({ ...expected, retired: z.boolean() })

export type AddPerson = z.output<typeof addPersonSchema>
export type ChangePerson = z.output<typeof changePersonSchema>
export type RetirePerson = z.output<typeof retirePersonSchema>

/** Which digits are refused is core's to say, on the server. */
export const setOwnPinSchema = z
  .object({
    password: text().min(1, 'Enter your password.').max(200),
    pin: text().regex(/^\d{6}$/, 'Enter six digits.'),
    again: text(),
  })
  .refine(({ pin, again }) => pin === again, { path: ['again'], message: 'This is not the same PIN. Enter it again.' })
export const ofPersonSchema = z.object({ personId: text().max(100) })
export const clearPinSchema = ofPersonSchema
export type OfPerson = z.output<typeof ofPersonSchema>

const ownPassword = text().min(1, 'Enter your password.').max(200)
const again = { path: ['again'], message: 'This is not the same password. Enter it again.' }

export const changeOwnPasswordSchema = z
  .object({ password: ownPassword, next: newPassword, again: text() })
  .refine(({ next, again: second }) => next === second, again)
export type ChangeOwnPassword = z.output<typeof changeOwnPasswordSchema>

export const resetPasswordSchema = z
  .object({ token: text().max(100), password: newPassword, again: text() })
  .refine(({ password, again: second }) => password === second, again)
export type ResetPassword = z.output<typeof resetPasswordSchema>

export const confirmPasswordSchema = z.object({ password: ownPassword })
export type ConfirmPassword = z.output<typeof confirmPasswordSchema>

export const endASessionSchema = z.object({ sessionId: text().max(100) })
export type EndASession = z.output<typeof endASessionSchema>

export const noInputSchema = z.object({})
export const confirmFactorSchema = z.object({ code: text().trim().min(1, 'Enter the code.').max(20) })
export type ConfirmFactor = z.output<typeof confirmFactorSchema>

export type SetOwnPin = z.output<typeof setOwnPinSchema>
export type ClearPin = z.output<typeof clearPinSchema>
