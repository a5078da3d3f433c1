import { z } from 'zod'
import { words } from './figure'

/** How a customer is reached. All but the name may be empty. */
export const contactFields = {
  name: words(120),
  phone: words(40),
  email: z.union([z.literal(''), z.email('Enter an email address, such as name@example.com.')]),
  address: words(300),
}

/** A customer who was here before (by id), or a new one (id ''). */
export const customerChoice = z
  .object({ id: z.string().trim().max(64), ...contactFields })
  .refine((customer) => customer.id !== '' || customer.name !== '', {
    path: ['name'],
    message: 'Enter the customer’s name, or pick a known customer.',
  })
