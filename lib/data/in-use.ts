import { RefusedError } from '@/lib/core/errors'
import type { Tx } from './db'

/** Of what is picked from a whole list only so many may be in use at once: far more than a shop has. */
export const mostInUse = { people: 500, instruments: 200, taxes: 50 } as const

const where = { retiredAt: null }
const countOf = {
  people: (tx: Tx) => tx.person.count({ where }),
  instruments: (tx: Tx) => tx.instrument.count({ where }),
  taxes: (tx: Tx) => tx.taxRate.count({ where }),
}

/** Asked before one is added. */
export async function refuseWhenFull(tx: Tx, what: keyof typeof mostInUse): Promise<void> {
  if ((await countOf[what](tx)) < mostInUse[what]) return
  throw new RefusedError({
    code: 'invalid',
    message: `${mostInUse[what]} ${what} are in use already. Retire one first.`,
  })
}
