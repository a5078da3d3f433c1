import type { z } from 'zod'

const prefix = 'brasstag '

/** What is kept belongs to whoever is signed in, as the page says: a tablet has many people. */
const placeOf = (key: string): string => `${prefix}${personHere()} ${key}`

function personHere(): string {
  if (typeof document === 'undefined') return ''
  return document.querySelector<HTMLElement>('[data-person]')?.dataset.person ?? ''
}

/** A kind of draft: the number of its shape, raised when the shape changes, and the schema, fetched when one is there. */
export type DraftKind<T extends { readonly shape: number }> = {
  readonly shape: T['shape']
  readonly schema: () => Promise<z.ZodType<T>>
}

/** Storage may be full or forbidden by the browser; the loss of a draft must not stop the work. */
function attempt<T>(work: () => T): T | null {
  try {
    return work()
  } catch {
    return null
  }
}

export const saveDraft = <T extends { readonly shape: number }>(key: string, draft: T): void => {
  attempt(() => localStorage.setItem(placeOf(key), JSON.stringify(draft)))
}

/** The draft kept under this key; null when there is none, or none of this shape. */
export async function loadDraft<T extends { readonly shape: number }>(
  key: string,
  { schema }: DraftKind<T>,
): Promise<T | null> {
  const text = attempt(() => localStorage.getItem(placeOf(key)))
  if (text === null) return null
  try {
    const parsed = (await schema()).safeParse(parseJson(text))
    return parsed.success ? parsed.data : null
  } catch {
    return null // the schema was not fetched: the draft stays for the next time
  }
}

/** Whatever is kept under this key moves to another one, in the place of what was there. */
export const moveDraft = (from: string, to: string): void => {
  attempt(() => {
    const text = localStorage.getItem(placeOf(from))
    if (text === null) return
    localStorage.setItem(placeOf(to), text)
    localStorage.removeItem(placeOf(from))
  })
}

/** The keys under which this person has something whose key begins so. */
export function draftKeys(start: string): string[] {
  const own = placeOf('')
  return (attempt(() => Object.keys(localStorage)) ?? [])
    .filter((key) => key.startsWith(own + start))
    .map((key) => key.slice(own.length))
}

export const clearDraft = (key: string): void => {
  attempt(() => localStorage.removeItem(placeOf(key)))
}

/** On sign-out: what this person typed does not stay on the device. */
export const forgetAll = (): void => {
  attempt(() => {
    const own = placeOf('')
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(own))
    keys.forEach((key) => localStorage.removeItem(key))
  })
}

/** The value of a JSON text; null when it is none. */
export function parseJson(text: string | null): unknown {
  if (text === null) return null
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
