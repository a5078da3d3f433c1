import { expect, it } from 'vitest'
import { headersOf } from '@/lib/web/error-to-response'
import { refuseTooMany, waitFor } from '@/lib/web/throttle'

const times = <T>(count: number, work: () => Promise<T>): Promise<T[]> =>
  Promise.all(Array.from({ length: count }, work))

it('so many of one use in a minute for whoever asks; another address and another use have their own', async () => {
  const waits = await times(300, () => waitFor('link', '10.0.0.7'))
  expect(waits.filter((waitS) => waitS === 0)).toHaveLength(240)
  expect(await waitFor('link', '10.0.0.8')).toBe(0)
  expect(await waitFor('paper', '10.0.0.7')).toBe(0)
})

it('what is too many is refused in words, with the seconds after which the next is taken', async () => {
  await times(10, () => waitFor('code', '10.0.0.9'))
  const refused = await refuseTooMany('code', '10.0.0.9').catch((error: unknown) => error)
  expect(refused).toMatchObject({ refusal: { code: 'too-many', message: expect.stringContaining('codes') } })
  const { refusal } = refused as { refusal: Parameters<typeof headersOf>[0] }
  const seconds = Number(headersOf(refusal)['Retry-After'])
  expect(seconds).toBeGreaterThan(50)
  expect(seconds).toBeLessThanOrEqual(60)
})

it('forty pictures of one person in a minute', async () => {
  expect(Math.max(...(await times(40, () => waitFor('picture', 'p1'))))).toBe(0)
  expect(await waitFor('picture', 'p1')).toBeGreaterThan(0)
  expect(await waitFor('picture', 'p2')).toBe(0)
})
