import { z } from 'zod'
import { importFields } from '@/lib/core/customers/import-columns'
import { requiredText, words } from './figure'
import { text } from './text'

/** How a customer is reached. All but the name may be empty. */
export const contactFields = {
  name: words(120),
  phone: words(60),
  email: z.union([z.literal(''), z.email('Enter an email address, such as name@example.com.')]),
  address: words(300),
}

/** A customer who was here before (by id), or a new one (id ''). */
export const customerChoice = z
  .object({ id: text().trim().max(64), ...contactFields })
  .refine((customer) => customer.id !== '' || customer.name !== '', {
    path: ['name'],
    message: 'Enter the customer’s name, or pick a known customer.',
  })

const id = text().min(1).max(64)
const version = z.number().int().positive()

/** All of a contact, the name with it. */
export const wholeContact = z.object({
  ...contactFields,
  name: requiredText('Enter the customer’s name.', 120),
  otherPhone: words(60),
  note: words(1000),
})
export type WholeContact = z.output<typeof wholeContact>

export const changeCustomerSchema = wholeContact.extend({ customerId: id, version })
export type ChangeCustomer = z.output<typeof changeCustomerSchema>

export const mergeCustomersSchema = z.object({
  /** The record that ends, and the one that stays, each as it was seen. */
  fromId: id,
  fromVersion: version,
  intoId: id,
  intoVersion: version,
  reason: requiredText('Enter why they are one customer.', 300),
})
export type MergeCustomers = z.output<typeof mergeCustomersSchema>

export const undoMergeSchema = z.object({ mergeId: id })
export type UndoMerge = z.output<typeof undoMergeSchema>

export const blankCustomerSchema = z.object({
  customerId: id,
  version,
  reason: requiredText('Enter who asked for it, and when.', 300),
  /** Asked a second time. */
  confirmed: z.literal(true, 'Confirm that the personal data is to be removed for good.'),
})
export type BlankCustomer = z.output<typeof blankCustomerSchema>

/** A pasted table or a file's text. `columns`: what each column holds; left out: as its heading says. */
export const importSchema = z.object({
  text: text()
    .max(600_000, 'This is more than can be read at once. Import 2,000 lines at a time.')
    .refine((text) => text.trim() !== '', 'Paste a table or choose a file.'),
  columns: z
    .array(z.enum(['', ...importFields]))
    .max(60)
    .nullable(),
})
export type ImportInput = z.output<typeof importSchema>

export const seeCustomersSchema = z.object({ q: words(120) })
