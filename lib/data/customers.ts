import 'server-only'
import { partsAsked } from '@/lib/core/find/fold'
import { phoneFigures } from '@/lib/core/find/phone-asked'
import { nameInOrder } from '@/lib/core/find/texts'
import { RefusedError } from '@/lib/core/errors'
import { phoneCountry } from '@/lib/core/shop/country'
import { customerById, noSuchCustomer } from './customer-record'
import type { Reader, Tx } from './db'
import { withParts } from './find'
import { putCustomerTexts } from './find-texts'
import { newId } from './ids'
import { callingCode, readPhone } from './phone'
import { shopOf } from './shop'
import { beginsWith } from './text-range'
import type { Write } from './write'

/** A customer who was here before (by id), or a new one (id ''). */
export type CustomerChoice = {
  readonly id: string
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
}

const found = {
  customerId: true,
  name: true,
  nameLower: true,
  phone: true,
  phoneDigits: true,
  email: true,
  address: true,
} as const

/**
 * Customers whom this names, by words of the name in any order or a telephone number in any form: names that begin so
 * first, then words that begin so, then the newest. Blanked and merged customers are not found.
 */
export async function customersLike(reader: Reader, text: string, take: number) {
  const asked = nameInOrder(text)
  const parts = partsAsked(text)
  const figures = phoneFigures(text, callingCode(phoneCountry(await shopOf(reader)))) ?? []
  const wanted = [
    parts,
    ...shortest(figures)
      .filter((form) => parts.join() !== form)
      .map((form) => [form]),
  ]
  const named = await customersNamed(reader, asked, take)
  const others = (await Promise.all(wanted.map((all) => withParts(reader, 'CustomerText', all)))).flat()
  const ids = [...new Set([...named, ...others])]
  if (ids.length === 0) return []
  const contacts = await reader.customerContact.findMany({
    where: { blankedAt: null, customerId: { in: ids } },
    select: found,
  })
  const place = new Map(ids.map((id, at) => [id, at]))
  const rank = ({ nameLower }: { nameLower: string }): number => {
    if (nameLower.startsWith(asked)) return 0
    return parts.every((part) => ` ${nameLower}`.includes(` ${part.trim()}`)) ? 1 : 2
  }
  return contacts
    .toSorted((a, b) => rank(a) - rank(b) || (place.get(a.customerId) ?? 0) - (place.get(b.customerId) ?? 0))
    .slice(0, take)
}

/** Whoever has the longer form has the shorter; one of few figures is in more numbers than are looked at. */
const shortest = (forms: readonly string[]): string[] =>
  forms.filter((form) => !forms.some((other) => other !== form && other.length >= 6 && form.includes(other)))

/** A common word is in more names than are looked at: those that begin so are found first, by their own index. */
async function customersNamed(reader: Reader, asked: string, take: number): Promise<string[]> {
  if (asked.length < 2) return []
  const rows = await reader.customerContact.findMany({
    where: { nameLower: beginsWith(asked), blankedAt: null, customer: { mergedIntoId: null } },
    orderBy: { nameLower: 'asc' },
    take,
    select: { customerId: true },
  })
  return rows.map(({ customerId }) => customerId)
}

export type ContactTyped = {
  readonly name: string
  readonly phone: string
  readonly otherPhone: string
  readonly email: string
  readonly address: string
  readonly note: string
}

/** The columns of a contact: what was typed, and what it is found by. */
export function contactColumns(typed: ContactTyped, country: string) {
  const first = readPhone(typed.phone, country)
  const other = readPhone(typed.otherPhone, country)
  const { name, phone, otherPhone, email, address, note } = typed
  return {
    ...{ name, phone, otherPhone, email, address, note },
    nameLower: nameInOrder(typed.name),
    phoneE164: first.e164,
    phoneDigits: first.digits,
    otherPhoneE164: other.e164,
    otherPhoneDigits: other.digits,
  }
}

/** The shop turned out to be in another country: what was typed without a country's code is another number. */
export async function readPhonesAnew(tx: Tx, country: string): Promise<void> {
  const contacts = await tx.customerContact.findMany({
    where: { OR: [{ phone: { not: '' } }, { otherPhone: { not: '' } }] },
  })
  for (const contact of contacts) {
    const { phoneE164, otherPhoneE164 } = contactColumns(contact, country)
    if (phoneE164 === contact.phoneE164 && otherPhoneE164 === contact.otherPhoneE164) continue
    const { customerId } = contact
    await tx.customerContact.update({ where: { customerId }, data: { phoneE164, otherPhoneE164 } })
    await putCustomerTexts(tx, [customerId])
  }
}

/** The customer who was picked, or a new one with the contact in its own row. Gives the id back. */
export async function pickOrAddCustomer(ctx: Write, choice: CustomerChoice): Promise<string> {
  if (choice.id !== '') return knownCustomer(ctx, choice.id)
  const { id: _new, ...typed } = choice
  return addCustomer(ctx, { ...typed, otherPhone: '', note: '' })
}

/** A new customer, the contact in its own row. Gives the id back. */
export async function addCustomer(ctx: Write, typed: ContactTyped): Promise<string> {
  const id = newId(ctx.now)
  await ctx.tx.customer.create({ data: { id, createdAt: ctx.now } })
  const contact = contactColumns(typed, phoneCountry(await shopOf(ctx.tx)))
  await ctx.tx.customerContact.create({ data: { customerId: id, ...contact } })
  await putCustomerTexts(ctx.tx, [id])
  ctx.audit({ action: 'customer.add', subjectId: id })
  return id
}

/** A customer on record as a booking names one. One that was merged is the other; one without personal data is nobody. */
export async function customerForBooking(reader: Reader, id: string): Promise<CustomerChoice> {
  const { contact, mergedIntoId } = await customerById(reader, id)
  if (mergedIntoId !== null) return customerForBooking(reader, mergedIntoId)
  if (contact.blankedAt !== null) throw noSuchCustomer()
  const { name, phone, email, address } = contact
  return { id, name, phone, email, address }
}

async function knownCustomer(ctx: Write, id: string): Promise<string> {
  const customer = await ctx.tx.customer.findUnique({ where: { id }, select: { id: true, mergedIntoId: true } })
  if (customer?.mergedIntoId) return knownCustomer(ctx, customer.mergedIntoId)
  if (customer) return customer.id
  throw new RefusedError({
    code: 'invalid',
    message: 'This customer is not on record any more. Pick or type the customer again.',
    fields: { 'customer.name': 'Not on record: pick or type the customer again.' },
  })
}
