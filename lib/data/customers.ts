import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'
import { newId } from './ids'
import { anywhereRange, distinctBy, suffixesOf } from './text-range'
import type { Write } from './write'

/** A customer who was here before (by id), or a new one (id ''). */
export type CustomerChoice = {
  readonly id: string
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
}

/** Only figures count when somebody is found by phone. */
const phoneDigitsOf = (phone: string): string => phone.replace(/\D/g, '')

const found = {
  select: {
    customerId: true,
    name: true,
    nameLower: true,
    phone: true,
    phoneDigits: true,
    email: true,
    address: true,
  },
  orderBy: { nameLower: 'asc' },
} as const

/** A common part is in many names; the first so many endings are looked at. */
const mostEndings = 400

/** Names and phone numbers that begin so first, then those that have it anywhere. Blanked customers are not found. */
export async function customersLike(reader: Reader, text: string, take: number) {
  const lower = text.trim().toLowerCase()
  const digits = phoneDigitsOf(text)
  const wanted = [lower, ...(digits.length >= 3 ? [digits] : [])]
  const ids = (await Promise.all(wanted.map((part) => customersWith(reader, part)))).flat()
  const contacts = await reader.customerContact.findMany({
    ...found,
    where: { blankedAt: null, customerId: { in: [...new Set(ids)] } },
  })
  const has = (contact: { nameLower: string; phoneDigits: string }, test: (text: string, part: string) => boolean) =>
    test(contact.nameLower, lower) || (digits.length >= 3 && test(contact.phoneDigits, digits))
  const anywhere = contacts.filter((contact) => has(contact, (whole, part) => whole.includes(part)))
  const first = anywhere.filter((contact) => has(contact, (whole, part) => whole.startsWith(part)))
  return distinctBy([...first, ...anywhere], (contact) => contact.customerId).slice(0, take)
}

async function customersWith(reader: Reader, part: string): Promise<string[]> {
  const rows = await reader.customerSuffix.findMany({
    where: { suffix: anywhereRange(part) },
    select: { customerId: true },
    orderBy: { suffix: 'asc' },
    take: mostEndings,
  })
  return rows.map(({ customerId }) => customerId)
}

/** The customer who was picked, or a new one with the contact in its own row. Gives the id back. */
export async function pickOrAddCustomer(ctx: Write, choice: CustomerChoice): Promise<string> {
  if (choice.id !== '') return knownCustomer(ctx, choice.id)
  const id = newId(ctx.now)
  await ctx.tx.customer.create({ data: { id, createdAt: ctx.now } })
  await ctx.tx.customerContact.create({
    data: {
      customerId: id,
      name: choice.name,
      nameLower: choice.name.toLowerCase(),
      phone: choice.phone,
      phoneDigits: phoneDigitsOf(choice.phone),
      email: choice.email,
      address: choice.address,
    },
  })
  await ctx.tx.customerSuffix.createMany({
    data: suffixesOf([choice.name, phoneDigitsOf(choice.phone)]).map((suffix) => ({ customerId: id, suffix })),
  })
  ctx.audit({ action: 'customer.add', subjectId: id })
  return id
}

async function knownCustomer(ctx: Write, id: string): Promise<string> {
  const customer = await ctx.tx.customer.findUnique({ where: { id }, select: { id: true } })
  if (customer) return customer.id
  throw new RefusedError({
    code: 'invalid',
    message: 'This customer is not on record any more. Pick or type the customer again.',
    fields: { 'customer.name': 'Not on record: pick or type the customer again.' },
  })
}
