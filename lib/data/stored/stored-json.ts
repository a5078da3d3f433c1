import 'server-only'
import type { z } from 'zod'

/** A column that holds JSON. */
export type StoredJson<T> = {
  /** `id` is the row's, for the error. */
  readonly read: (text: string, id: string | number) => T
  readonly write: (value: T) => string
}

/** Every key of T, optional ones too: a key that the schema forgot would be dropped on reading. */
export type Fields<T> = { readonly [K in keyof T]-?: z.ZodType<T[K] | undefined> }

/** Characters of text that a column keeps parsed: a page reads the same plan several times, a queue many equal steps. */
const mostParsed = 2_000_000

/** How a shape is read; every one that rows may have, the newest last. Rows from before there were shapes are of shape 1. */
type Shapes<T> = readonly [z.ZodType<T>, ...z.ZodType<T>[]]

/** An object, with the number of its shape among its fields. `column`: "PlanVersion.results". */
export const storedObject = <T extends object>(column: string, ...shapes: Shapes<T>): StoredJson<T> => ({
  read: reader(column, shapes, (kept) => kept),
  write: (value) => JSON.stringify({ shape: shapes.length, ...value }),
})

/** Anything else, as `{ shape, value }`. Rows from before there was a shape hold the value alone. */
export const storedValue = <T>(column: string, ...shapes: Shapes<T>): StoredJson<T> => ({
  read: reader(column, shapes, (kept) => (hasShape(kept) ? kept.value : kept)),
  write: (value) => JSON.stringify({ shape: shapes.length, value }),
})

function reader<T>(column: string, shapes: Shapes<T>, valueOf: (kept: unknown) => unknown) {
  const parsed = new Map<string, { readonly value: T }>()
  let length = 0
  return (text: string, id: string | number): T => {
    const known = parsed.get(text)
    if (known) return known.value
    const fail = (why: string): never => {
      throw new Error(`${column} of row ${id} cannot be read: ${why}`)
    }
    const kept = parseText(text, fail)
    const shape = hasShape(kept) ? kept.shape : 1
    const schema = shapes[shape - 1] ?? fail(`it has shape ${shape}, this version of Brasstag knows ${shapes.length}`)
    const result = schema.safeParse(valueOf(kept))
    if (!result.success) return fail(result.error.issues.map(issueText).join('; '))
    length += text.length
    if (length > mostParsed) {
      parsed.clear()
      length = text.length
    }
    parsed.set(text, { value: result.data })
    return result.data
  }
}

function parseText(text: string, fail: (why: string) => never): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return fail('it is not JSON')
  }
}

const hasShape = (kept: unknown): kept is { readonly shape: number; readonly value?: unknown } =>
  typeof kept === 'object' && kept !== null && 'shape' in kept && typeof kept.shape === 'number'

/** "owes.0.kind: Invalid option" */
const issueText = ({ path, message }: z.core.$ZodIssue): string =>
  path.length === 0 ? message : `${path.join('.')}: ${message}`
