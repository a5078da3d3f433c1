import { expect, it } from 'vitest'
import { newId } from '@/lib/data/ids'

it('ids made one after the other sort so, also within one moment', () => {
  const moments = [0, 0, 0, 0, 1, 1, 5].map((ms) => new Date(Date.parse('2026-03-02T14:00:00Z') + ms))
  const ids = moments.map(newId)
  expect(ids.toSorted()).toEqual(ids)
  expect(new Set(ids).size).toBe(ids.length)
  // RFC 9562, section 5.7: 48 bits of Unix time in milliseconds, then the version, 7.
  expect(ids.map((id) => Number.parseInt(id.replaceAll('-', '').slice(0, 12), 16))).toEqual(moments.map(Number))
  expect(ids.every((id) => /^[\da-f]{8}-[\da-f]{4}-7[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/.test(id))).toBe(true)
})
