import type { KeptDeed, NewDeed } from './kept'
import type { Settled } from './rules'
import type { Store } from './store'

/** For a browser that keeps nothing: the deeds last as long as the page. */
export function memoryStore(): Pick<Store, 'deeds' | 'addDeed' | 'settleDeeds'> {
  const deeds = new Map<number, KeptDeed>()
  let last = 0
  return {
    deeds: async () => [...deeds.values()],
    async addDeed(deed: NewDeed) {
      if ([...deeds.values()].some(({ id }) => id === deed.id)) return
      last += 1
      deeds.set(last, { ...deed, seq: last })
    },
    async settleDeeds({ gone, changed }: Settled) {
      gone.forEach((seq) => deeds.delete(seq))
      changed.forEach((deed) => deeds.set(deed.seq, deed))
    },
  }
}
