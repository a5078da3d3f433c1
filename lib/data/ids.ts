import { v7 } from 'uuid'

/** A new id: UUIDv7, so that rows made later sort later. */
export const newId = (now: Date): string => v7({ msecs: now.getTime() })
