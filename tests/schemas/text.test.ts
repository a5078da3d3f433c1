import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { isText } from '@/lib/core/plain-text'
import { text } from '@/lib/schemas/text'

const folder = join(import.meta.dirname, '..', '..', 'lib', 'schemas')

/** All schemas inside one, itself among them: whatever its definition holds that is a schema. */
function inside(schema: z.core.$ZodType, known = new Set<z.core.$ZodType>()): Set<z.core.$ZodType> {
  if (known.has(schema)) return known
  known.add(schema)
  const look = (value: unknown): void => {
    if (value instanceof z.core.$ZodType) inside(value, known)
    else if (Array.isArray(value)) value.forEach(look)
    else if (typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype) {
      Object.values(value).forEach(look)
    }
  }
  const { def } = schema._zod
  Object.values(def.type === 'lazy' ? { inner: (def as z.core.$ZodLazyDef).getter() } : def).forEach(look)
  return known
}

type Leaf = { readonly where: string; readonly schema: z.core.$ZodType }
let leaves: readonly Leaf[] = []

beforeAll(async () => {
  const found = new Map<z.core.$ZodType, string>()
  for (const file of readdirSync(folder)) {
    const exported = (await import(join(folder, file))) as Readonly<Record<string, unknown>>
    for (const [name, value] of Object.entries(exported)) {
      if (!(value instanceof z.core.$ZodType)) continue
      for (const one of inside(value)) if (one._zod.def.type === 'string') found.set(one, `${file}: ${name}`)
    }
  }
  leaves = [...found].map(([schema, where]) => ({ schema, where }))
})

/** By Unicode: U+0000 to U+001F, U+007F to U+009F, and either half of a pair alone. */
const bad = [
  '\u0000',
  '\u0001',
  '\u0008',
  '\u000b',
  '\u000c',
  '\u001b',
  '\u001f',
  '\u007f',
  '\u0085',
  '\ud800',
  '\udc00',
]

describe('a text', () => {
  it('may have more lines and any letters, and nothing that is no text', () => {
    for (const fine of ['', 'a\tb\nc\r\nd', 'Müller & Søn', '漢字', '🔩 bolt', '3/8″ – 16', 'e\u0301']) {
      expect([fine, text().safeParse(fine).success]).toEqual([fine, true])
    }
    for (const one of bad) expect([escape(one), isText(`a${one}b`)]).toEqual([escape(one), false])
  })

  it('of every schema is one: none of its text fields takes what is no text', async () => {
    expect(leaves.length).toBeGreaterThan(150)
    const taken = leaves.flatMap(({ where, schema }) =>
      bad
        .filter((one) => ['a', '', '2026-03-14', '12'].some((rest) => z.safeParse(schema, `${rest}${one}`).success))
        .map((one) => `${where} takes ${escape(one)}`),
    )
    expect(taken).toEqual([])
  })
})
