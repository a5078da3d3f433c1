import 'server-only'
import sharp from 'sharp'
import { RefusedError } from '@/lib/core/errors'

// A decoder takes every core it is given: the other one answers whoever else asks.
sharp.concurrency(1)

/** So many pictures wait for the one that is read; what comes then is sent again later. */
const mostWaiting = 12

const busy = (): RefusedError =>
  new RefusedError({
    code: 'unavailable',
    message: 'Too many pictures are being read just now. Wait half a minute, then send this one again.',
    retryAfterS: 30,
  })

let taken = 0
let last: Promise<unknown> = Promise.resolve()

/**
 * One picture is decoded at a time: a small file may become 64 million pixels, and ten of them at once would hold the
 * processor and the memory of the whole shop. The others wait in turn; one that finds the line full is refused before
 * anything of it is read.
 */
export async function inTurn<T>(decode: () => Promise<T>): Promise<T> {
  if (taken > mostWaiting) throw busy()
  taken += 1
  const before = last
  const mine = before.then(decode, decode)
  last = mine.catch(() => undefined)
  try {
    return await mine
  } finally {
    taken -= 1
  }
}
