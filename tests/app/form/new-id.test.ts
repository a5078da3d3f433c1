import { validate, version } from 'uuid'
import { expect, it } from 'vitest'
import { newId } from '@/app/_components/form/new-id'

it('is a UUID of version 4 to a reader that is not ours, another one each time, with no bit that stands still', () => {
  const ids = Array.from({ length: 2000 }, newId)
  expect(ids.every((id) => validate(id) && version(id) === 4)).toBe(true)
  expect(new Set(ids).size).toBe(ids.length)
  // 122 of the 128 bits are drawn: of 2,000 ids each of them is once set and once not (it fails once in 2^1990).
  const bits = ids.map((id) => BigInt(`0x${id.replaceAll('-', '')}`))
  const [everSet, alwaysSet] = [bits.reduce((a, b) => a | b), bits.reduce((a, b) => a & b)]
  const drawn = (everSet & ~alwaysSet).toString(2).replaceAll('0', '').length
  expect(drawn).toBe(122)
})
