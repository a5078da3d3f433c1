import 'server-only'
import { localFigures } from '@/lib/core/customers/alike'
import { customerText } from '@/lib/core/find/texts'
import { contactColumns, type ContactTyped } from './customers'
import type { Reader } from './db'
import { newId } from './ids'
import type { Write } from './write'

type Contact = ReturnType<typeof contactColumns>

/** How many values one statement asks for. */
const chunk = 400

const chunksOf = <T>(all: readonly T[]): T[][] =>
  Array.from({ length: Math.ceil(all.length / chunk) }, (_, at) => all.slice(at * chunk, (at + 1) * chunk))

const known = {
  name: true,
  nameLower: true,
  phoneE164: true,
  phoneDigits: true,
  otherPhoneE164: true,
  otherPhoneDigits: true,
  email: true,
} as const

/** Customers on record who share a number, a mail address or the name with any of these. */
export async function sharingWith(reader: Reader, contacts: readonly Contact[]) {
  const found = []
  for (const some of chunksOf(contacts)) {
    const filled = (values: readonly string[]) => values.filter((value) => value !== '')
    const figures = filled(some.flatMap(({ phoneDigits, otherPhoneDigits }) => [phoneDigits, otherPhoneDigits]))
    const numbers = filled(some.flatMap(({ phoneE164, otherPhoneE164 }) => [phoneE164, otherPhoneE164]))
    const is = (where: object) =>
      reader.customerContact.findMany({
        where: { ...where, blankedAt: null, customer: { mergedIntoId: null } },
        select: known,
      })
    found.push(
      ...(await is({ nameLower: { in: some.map(({ nameLower }) => nameLower) } })),
      ...(await is({ email: { in: filled(some.map(({ email }) => email)) } })),
      ...(await is({ phoneE164: { in: numbers } })),
      ...(await is({ phoneDigits: { in: figures } })),
      ...(await is({ otherPhoneDigits: { in: figures } })),
    )
  }
  return found
}

export type SharedContact = Pick<Contact, keyof typeof known>

/** The numbers a contact is known by: in full, and as figures where they are a whole local number. */
const numbersOf = (contact: SharedContact): string[] =>
  [contact.phoneE164, contact.otherPhoneE164, contact.phoneDigits, contact.otherPhoneDigits].filter(
    (number) => number.length >= localFigures,
  )

/**
 * Looks up whether somebody is there already: by a number, by the mail address, or by the name when not both have a number.
 * Two of one name with different numbers are two.
 */
export class KnownContacts {
  readonly #numbers = new Map<string, string>()
  readonly #mails = new Map<string, string>()
  readonly #names = new Map<string, { name: string; hasNumber: boolean }[]>()

  constructor(contacts: readonly SharedContact[] = []) {
    for (const contact of contacts) this.add(contact, contact.name)
  }

  /** `called`: how it is told who is there. */
  add(contact: SharedContact, called: string): void {
    for (const number of numbersOf(contact)) this.#numbers.set(number, called)
    if (contact.email !== '') this.#mails.set(contact.email.toLowerCase(), called)
    const same = this.#names.get(contact.nameLower) ?? []
    this.#names.set(contact.nameLower, [...same, { name: called, hasNumber: numbersOf(contact).length > 0 }])
  }

  find(contact: SharedContact): { readonly by: 'phone' | 'email' | 'name'; readonly called: string } | null {
    const numbers = numbersOf(contact)
    for (const number of numbers) {
      const called = this.#numbers.get(number)
      if (called !== undefined) return { by: 'phone', called }
    }
    const byMail = contact.email === '' ? undefined : this.#mails.get(contact.email.toLowerCase())
    if (byMail !== undefined) return { by: 'email', called: byMail }
    const same = this.#names.get(contact.nameLower)?.find((one) => !one.hasNumber || numbers.length === 0)
    return same ? { by: 'name', called: same.name } : null
  }
}

/** Many new customers at once, with what they are found by. */
export async function addCustomers(ctx: Write, all: readonly ContactTyped[], country: string): Promise<void> {
  for (const some of chunksOf(all)) {
    const rows = some.map((typed) => ({ customerId: newId(ctx.now), ...contactColumns(typed, country) }))
    await ctx.tx.customer.createMany({ data: rows.map(({ customerId: id }) => ({ id, createdAt: ctx.now })) })
    await ctx.tx.customerContact.createMany({ data: rows })
    await ctx.tx.customerText.createMany({
      data: rows.map((row) => ({ customerId: row.customerId, text: customerText([row]) })),
    })
  }
}
