import { foldedWords, textToFind } from './fold'

type Contact = {
  readonly name: string
  readonly email: string
  readonly phoneE164: string
  readonly phoneDigits: string
  readonly otherPhoneE164: string
  readonly otherPhoneDigits: string
}

const figures = (e164: string): string => e164.replace(/\D/g, '')

/**
 * What a customer is found by: names, addresses of mail and telephone numbers, as typed and with the country's code; of
 * the customer and of those that turned out to be the same person.
 * Derived: `textToFind` of these fields.
 * Example: "Ada Böhm", 555-0199 → " ada bohm adabohm boehm adaboehm 5550199".
 */
export const customerText = (contacts: readonly Contact[]): string =>
  textToFind(
    contacts.flatMap((contact) => [
      ...[contact.name, contact.email, contact.phoneDigits, figures(contact.phoneE164)],
      ...[contact.otherPhoneDigits, figures(contact.otherPhoneE164)],
    ]),
  )

/**
 * What a head is found by: its stamp, casting marks and the casting's name.
 * Derived: `textToFind` of these fields.
 * Example: stamp "TR 1", casting "Halden 4" → " tr 1 tr1 halden 4 halden4".
 */
export const headText = (head: { stamp: string; marks: string; casting: string }): string =>
  textToFind([head.stamp, head.marks, head.casting])

/**
 * A name as two of them are compared and put in order: its words without accents and capitals, one space between them.
 * Derived: `foldedWords`.
 * Example: "Ada  BÖHM" → "ada bohm".
 */
export const nameInOrder = (name: string): string => foldedWords(name).join(' ')
