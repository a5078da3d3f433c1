/** For this long, in minutes, a tick is taken back without a word; after that, with a reason. */
export const freeUndoMinutes = 10
