import type { SeatStand } from '../cut/cautions'
import type { NearestSeat } from '../head-now/seat-now'
import { pointLabel } from '../readings/points'

/** What one seat's depth stands on, of several heads with whose it is. */
export const seatGroundWords = (ground: NearestSeat['ground']): string =>
  ground.by === 'record' ? 'record less what is removed' : readWords(ground)

/** What a seat's figure stands on: "read on this head, chamber 3 exhaust", "by the record, less what is gone". */
export function groundWords({ ground, notRead, tag, notKnownOf }: SeatStand): string {
  const parts = [
    seatGroundWords(ground),
    notRead > 0 ? `${notRead} not read, taken like it` : '',
    notKnownOf.length > 0 ? `${tag} only: not known of ${notKnownOf.join(', ')}` : '',
  ]
  return parts.filter((part) => part !== '').join('; ')
}

const readWords = (ground: Exclude<NearestSeat['ground'], { by: 'record' }>): string =>
  ground.by === 'read'
    ? `read on this head, ${pointLabel(ground.valve)}`
    : `not read; taken like ${pointLabel(ground.like)} of this head`
