import type { NearestSeat } from '../head-now/seat-now'
import { pointLabel } from '../readings/points'

type Grounded = Pick<NearestSeat, 'ground' | 'notRead'> & {
  readonly tag: string
  readonly notKnownOf: readonly string[]
}

/** What a seat's figure stands on: "read on this head, chamber 3 exhaust", "by the record, less what is gone". */
export function groundWords({ ground, notRead, tag, notKnownOf }: Grounded): string {
  const parts = [
    ground.by === 'record' ? 'by the casting record, less what is removed' : readWords(ground.valve),
    ground.by === 'like' ? `taken like ${pointLabel(ground.like)}` : '',
    notRead > 0 ? `${notRead} not read, taken like it` : '',
    notKnownOf.length > 0 ? `${tag} only: not known of ${notKnownOf.join(', ')}` : '',
  ]
  return parts.filter((part) => part !== '').join('; ')
}

const readWords = (valve: string): string => `read on this head, ${pointLabel(valve)}`
