import { z } from 'zod'
import { requiredText, words } from './figure'
import { quantity } from './money'
import { text } from './text'

export const vendorSchema = z.object({
  name: requiredText('Enter the name of the vendor.', 120),
  phone: words(60),
  email: z.union([z.literal(''), z.email('Enter an email address, such as name@example.com.')]),
  address: words(400),
  services: words(400),
  /** How many heads make a full box; '' → none is waited for. */
  boxHeads: z
    .union([z.literal('').transform(() => null), quantity], 'Enter a whole number, or leave it empty.')
    .default(null),
})
const expected = { vendorId: text(), version: z.number().int() }

export const addVendorSchema = vendorSchema
export const changeVendorSchema = vendorSchema.extend(expected)
export const retireVendorSchema = z.object({ ...expected, retired: z.boolean() })

export type AddVendor = z.output<typeof addVendorSchema>
export type ChangeVendor = z.output<typeof changeVendorSchema>
export type RetireVendor = z.output<typeof retireVendorSchema>
