import { v7 } from 'uuid'

let last = { msecs: -1, seq: 0 }

/** A new id: UUIDv7, so that rows made later sort later, also those of one booking that share their moment. */
export function newId(now: Date): string {
  const msecs = now.getTime()
  last = { msecs, seq: last.msecs === msecs ? last.seq + 1 : 0 }
  return v7(last)
}
