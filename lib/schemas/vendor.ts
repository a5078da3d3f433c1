import { z } from 'zod'
import { neededWords, words } from './figure'

export const vendorSchema = z.object({
  name: neededWords('Type the name of the vendor.', 120),
  phone: words(60),
  email: z.union([z.literal(''), z.email('This does not look like an e-mail address.')]),
  address: words(400),
  services: words(400),
})
const expected = { vendorId: z.string(), version: z.number().int() }

export const addVendorSchema = vendorSchema
export const changeVendorSchema = vendorSchema.extend(expected)
export const retireVendorSchema = z.object({ ...expected, retired: z.boolean() })

export type AddVendor = z.output<typeof addVendorSchema>
export type ChangeVendor = z.output<typeof changeVendorSchema>
export type RetireVendor = z.output<typeof retireVendorSchema>
