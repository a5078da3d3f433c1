import type { Dossier } from './dossier'

/** Whether a reading was corrected or withdrawn after the newest release: by the order of events, never by the clock. */
export function correctedSinceRelease({ visit }: Pick<Dossier, 'visit'>): boolean {
  const released = visit.events.findLast((event) => event.kind === 'release')?.seq
  if (released === undefined) return false
  return visit.readings.some((set) => set.eventSeq > released && set.points.some((point) => point.correctsId !== null))
}
