import { expect, it } from 'vitest'
import {
  refuseTooMany,
  signInAllowed,
  signInFailed,
  signInSucceeded,
  uploadAllowed,
  withinRateLimit,
} from '@/lib/web/throttle'

const times = <T>(count: number, work: () => Promise<T>): Promise<T[]> =>
  Promise.all(Array.from({ length: count }, work))

it('ten wrong passwords for one name, however it is written, and no more', async () => {
  await times(9, () => signInFailed('Dov'))
  expect(await signInAllowed('dov')).toBe(true)
  await signInFailed(' DOV ')
  expect(await signInAllowed('dov')).toBe(false)
  expect(await signInAllowed('orla')).toBe(true)
})

it('the right password begins the count again', async () => {
  await times(9, () => signInFailed('tamsin'))
  await signInSucceeded('Tamsin')
  await times(9, () => signInFailed('tamsin'))
  expect(await signInAllowed('tamsin')).toBe(true)
})

it('three hundred of one use in a minute, whoever asks; another use has its own', async () => {
  expect(await times(300, () => withinRateLimit('link'))).not.toContain(false)
  expect(await withinRateLimit('link')).toBe(false)
  await expect(refuseTooMany('link')).rejects.toMatchObject({ refusal: { code: 'too-many' } })
  await expect(refuseTooMany('paper')).resolves.toBeUndefined()
})

it('forty pictures of one person in a minute', async () => {
  expect(await times(40, () => uploadAllowed('p1'))).not.toContain(false)
  expect(await uploadAllowed('p1')).toBe(false)
  expect(await uploadAllowed('p2')).toBe(true)
})
