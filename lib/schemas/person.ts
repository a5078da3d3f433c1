import { z } from 'zod'
import { grants, roles } from '@/lib/core/access/roles'
import { requiredText } from './figure'

export const personName = requiredText('Enter the name used in the shop.', 80)
export const signInName = z
  .string()
  .trim()
  .toLowerCase()
  .regex(/^[\p{L}\p{N}][\p{L}\p{N}._-]{0,39}$/u, 'Use letters, digits, dots and hyphens, no spaces.')
/** Length only: whether it is among the common ones is the server's to say. */
export const newPassword = z
  .string()
  .min(8, 'Use at least 8 characters; 15 or more are better.')
  .max(200, 'Use 200 characters at most.')

const rights = {
  roles: z.array(z.enum(roles)).min(1, 'Choose at least one role.'),
  grants: z.array(z.enum(grants)),
}
/** One row of a versioned record: zero rows changed means that somebody else was first. */
const expected = { personId: z.string(), version: z.number().int() }

export const addPersonSchema = z.object({
  name: personName,
  signIn: signInName,
  ...rights,
  password: newPassword,
})
export const changePersonSchema = z.object({ ...expected, name: personName, ...rights })
export const setPasswordSchema = z.object({ ...expected, password: newPassword })
export const retirePersonSchema = z.object({ ...expected, retired: z.boolean() })

export type AddPerson = z.output<typeof addPersonSchema>
export type ChangePerson = z.output<typeof changePersonSchema>
export type SetPassword = z.output<typeof setPasswordSchema>
export type RetirePerson = z.output<typeof retirePersonSchema>

/** Which digits are refused is core's to say, on the server. */
export const setOwnPinSchema = z
  .object({
    password: z.string().min(1, 'Enter your password.').max(200),
    pin: z.string().regex(/^\d{6}$/, 'Enter six digits.'),
    again: z.string(),
  })
  .refine(({ pin, again }) => pin === again, { path: ['again'], message: 'This is not the same PIN. Enter it again.' })
export const clearPinSchema = z.object({ personId: z.string() })

export type SetOwnPin = z.output<typeof setOwnPinSchema>
export type ClearPin = z.output<typeof clearPinSchema>
