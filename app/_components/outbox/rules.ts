import { mostAtOnce } from '@/lib/schemas/most-at-once'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'
import type { KeptDeed } from './kept'

const isWaiting = ({ refusal }: KeptDeed): boolean => refusal === undefined

/**
 * The next deeds to send for this person, oldest first: those up to the next photo, or that photo alone. What others did
 * here waits for them.
 */
export function nextBatch(kept: readonly KeptDeed[], personId: string, most = mostAtOnce): KeptDeed[] {
  const waiting = kept.filter((deed) => isWaiting(deed) && deed.personId === personId).toSorted((a, b) => a.seq - b.seq)
  const photoAt = waiting.findIndex(({ kind }) => kind === 'photo')
  return waiting.slice(0, photoAt === 0 ? 1 : Math.min(most, photoAt === -1 ? most : photoAt))
}

/** What the answers change of what is kept: the numbers that go, and the deeds that stay as something else. */
export type Settled = { readonly gone: readonly number[]; readonly changed: readonly KeptDeed[] }

/**
 * Done: it goes, and the later deeds of its step have seen it. Refused: it stays, set aside with the reason. Again: it
 * stays as it is. What is not answered stays as it is.
 */
export function settle(kept: readonly KeptDeed[], answers: readonly OperationAnswer[]): Settled {
  const byId = new Map(kept.map((deed) => [deed.id, deed]))
  const changed = new Map<number, KeptDeed>()
  const gone: number[] = []
  for (const answer of answers) {
    const deed = byId.get(answer.id)
    if (!deed || answer.state === 'again') continue
    if (answer.state === 'refused') {
      changed.set(deed.seq, { ...deed, refusal: answer.refusal })
      continue
    }
    gone.push(deed.seq)
    const seen = seenOf(answer.value)
    if (seen === null) continue
    for (const later of kept) {
      const now = changed.get(later.seq) ?? later
      if (later.seq > deed.seq && isWaiting(now) && isSameStep(later, deed))
        changed.set(later.seq, withSight(now, seen))
    }
  }
  for (const seq of gone) changed.delete(seq)
  return { gone, changed: [...changed.values()] }
}

const isSameStep = (a: KeptDeed, b: KeptDeed): boolean =>
  a.input.visitId === b.input.visitId &&
  'step' in a.input &&
  'step' in b.input &&
  JSON.stringify(a.input.step) === JSON.stringify(b.input.step)

const withSight = (deed: KeptDeed, seen: number): KeptDeed =>
  typeof deed.input.seen === 'number' && deed.input.seen < seen ? { ...deed, input: { ...deed.input, seen } } : deed

const seenOf = (value: unknown): number | null =>
  typeof value === 'object' && value !== null && 'seen' in value && typeof value.seen === 'number' ? value.seen : null

const shortestPauseMs = 1000
const longestPauseMs = 60_000

/** 1 s after the first failure, then twice as long each time, up to a minute. */
export const pauseMs = (failures: number): number =>
  Math.min(longestPauseMs, shortestPauseMs * 2 ** Math.max(0, failures - 1))
