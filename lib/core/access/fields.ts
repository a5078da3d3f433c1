import { can } from './can'
import type { Actor } from './roles'
import type { Action } from './table'

/**
 * Field × right: what somebody who may open a page may still not read on it. `null`: nobody ever reads it. A page asks
 * `sees`, and a field that is not seen is left out of the answer: hiding it on the screen would still send it.
 */
export const fieldTable = {
  /** Prices of work and of findings, taxes, and every sum of them. */
  price: 'price.see',
  /** What was paid, invoiced, credited, and what is owed. */
  account: 'price.see',
  /** What a head or a part costs the shop. */
  'supply cost': 'supply.cost',
  /** What a vendor charges, freight, and who pays when it is done over. */
  'vendor cost': 'outside.cost',
  /** How a customer is reached, but for the phone, which everybody at work may need; and the note about them. */
  contact: 'customer.see',
  /** What was written to a customer. */
  message: 'message.write',
  /** The names by which people sign in. */
  'sign-in name': 'person.change',
  /** Where mail is handed in, and by whom. */
  'mail server': 'settings.change',
  /** Hashes and sealed texts. */
  secret: null,
} as const satisfies Record<string, Action | null>

export type Field = keyof typeof fieldTable
export const fields = Object.keys(fieldTable) as Field[]

/** Whether this person may read this field, by the table. */
export function sees(actor: Actor, field: Field): boolean {
  const action = fieldTable[field]
  return action !== null && can(actor, action)
}
