import { expect, it } from 'vitest'
import { inTurn } from '@/lib/data/one-decoder'
import { refusalOf } from '../jobs/counter-shop'

/** A decoder that ends when it is told to, and notes how many run. */
function decoders() {
  let running = 0
  let most = 0
  const ends: (() => void)[] = []
  const one = (fails = false) =>
    inTurn(async () => {
      running += 1
      most = Math.max(most, running)
      await new Promise<void>((resolve) => ends.push(resolve))
      running -= 1
      if (fails) throw new Error('damaged')
      return 'read'
    })
  const endNext = async () => {
    for (let turn = 0; turn < 20 && ends.length === 0; turn += 1) await Promise.resolve()
    ends.shift()?.()
  }
  return { one, endNext, most: () => most }
}

it('one picture is decoded at a time, in the order they came, and a damaged one holds nobody up', async () => {
  const { one, endNext, most } = decoders()
  const order: number[] = []
  const all = [0, 1, 2, 3].map((place) =>
    one(place === 1).then(
      () => order.push(place),
      () => order.push(place),
    ),
  )
  for (const _ of all) await endNext()
  await Promise.all(all)
  expect(order).toEqual([0, 1, 2, 3])
  expect(most()).toBe(1)
})

it('who finds the line full is told when to come again, and the line goes on', async () => {
  const { one, endNext } = decoders()
  const waiting = Array.from({ length: 13 }, () => one())
  const refused = await refusalOf(one())
  expect(refused.code).toBe('unavailable')
  expect(refused.retryAfterS).toBeGreaterThan(0)
  expect(refused.message).toContain('send this one again')
  for (const _ of waiting) await endNext()
  expect(await Promise.all(waiting)).toHaveLength(13)
  const after = one()
  await endNext()
  expect(await after).toBe('read')
})
