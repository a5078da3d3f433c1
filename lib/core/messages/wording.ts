import { ok, refuse, type Result } from '../errors'
import type { MessageKind } from './kinds'
import { oneLine } from './line'

/** What may stand in braces in a text: {customer}. */
export const placeholders = [
  'customer',
  'shop',
  'phone',
  'job',
  'heads',
  'promise',
  'link',
  'finding',
  'price',
  'owed',
] as const
export type Placeholder = (typeof placeholders)[number]

export type MessageValues = Readonly<Partial<Record<Placeholder, string>>>

const always: readonly Placeholder[] = ['customer', 'shop', 'phone', 'job', 'heads', 'promise', 'link']

/** What each text can say: a finding and its price only in a question, what is owed only once there is something to fetch. */
export const placeholdersOf: Readonly<Record<MessageKind, readonly Placeholder[]>> = {
  booked: always,
  question: [...always, 'finding', 'price'],
  'date-changed': always,
  ready: [...always, 'owed'],
  'spec-sheet': [...always, 'owed'],
}

const braced = /\{([^{}]*)\}/g

const bracedAndStop = /\{([^{}]*)\}(\.?)/g

/** A value that ends a sentence of its own is not ended twice. */
const ended = (value: string, stop: string): string => (/[.!?…]$/.test(value) ? value : `${value}${stop}`)

const inBraces = (names: readonly string[]): string => names.map((name) => `{${name}}`).join(', ')

/** Whether every brace in a wording is a placeholder that this text can fill. */
export function checkWording(kind: MessageKind, text: string): Result<true> {
  const known: readonly string[] = placeholdersOf[kind]
  const unknown = [...text.matchAll(braced)].map(([, name = '']) => name).filter((name) => !known.includes(name))
  if (unknown.length > 0) {
    return refuse('invalid', `This text does not know ${inBraces(unknown)}. It can use ${inBraces(known)}.`)
  }
  if (/[{}]/.test(text.replaceAll(braced, ''))) {
    return refuse('invalid', 'A brace { or } stands alone. Write placeholders as {customer}.')
  }
  return ok(true)
}

/**
 * A wording with its values filled in. A line with a placeholder that has no value is left out, and no two empty lines
 * follow each other. A value is never looked at for placeholders.
 *
 * Example: 'Job {job}.\nDue {promise}.' with job 26-0117 and no promise → 'Job 26-0117.'
 */
export function fillWording(text: string, values: MessageValues): string {
  const valueOf = (name: string): string | undefined => values[name as Placeholder]
  return text
    .split('\n')
    .filter((line) => [...line.matchAll(braced)].every(([, name = '']) => valueOf(name) !== undefined))
    .map((line) =>
      line.replaceAll(bracedAndStop, (_all, name: string, stop: string) => ended(valueOf(name) ?? '', stop)),
    )
    .join('\n')
    .replaceAll(/\n{3,}/g, '\n\n')
    .trim()
}

/** The same for a subject, which is one line: what has no value is left out of it. */
export const fillSubject = (text: string, values: MessageValues): string =>
  oneLine(text.replaceAll(braced, (_all, name: string) => values[name as Placeholder] ?? '')).replaceAll(/ {2,}/g, ' ')

/** The mark that the customer's link stands behind until a message leaves. */
export const linkMark = '{link}'

/** Whether a text needs a link of its own. */
export const hasLink = (text: string): boolean => text.includes(linkMark)

/** A text as it leaves: with the address of the customer's page in the place of its mark. */
export const withLink = (text: string, address: string): string => text.replaceAll(linkMark, () => address)
