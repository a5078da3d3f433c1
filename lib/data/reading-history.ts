import 'server-only'
import type { VisitRecord } from './visit-records'

type SetRecord = VisitRecord['readings'][number]
export type HistoryEntry = { readonly set: SetRecord; readonly point: SetRecord['points'][number] }

/**
 * Every answer with all that was put in its place, the first as it was read, the last as it stands (or withdrawn), in the
 * order they were first read. Nothing is left out: this is the record, not what counts.
 */
export function readingChains(sets: readonly SetRecord[]): readonly (readonly HistoryEntry[])[] {
  const entries = sets.flatMap((set) => set.points.map((point) => ({ set, point })))
  const nextOf = new Map(
    entries.flatMap((entry) => (entry.point.correctsId ? [[entry.point.correctsId, entry] as const] : [])),
  )
  const chain = (entry: HistoryEntry): HistoryEntry[] => {
    const next = nextOf.get(entry.point.id)
    return next ? [entry, ...chain(next)] : [entry]
  }
  return entries
    .filter(({ point }) => point.correctsId === null)
    .sort((a, b) => a.set.eventSeq - b.set.eventSeq)
    .map(chain)
}
