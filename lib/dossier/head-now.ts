import type { ReadingKind } from '@/lib/core/readings/types'
import { ccBeforeCut } from '@/lib/core/at-mill/cc-at'
import type { HeadNow } from '@/lib/core/cut/plan'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'
import { cornersBefore, seatsBefore } from './metal-gone'
import { valuedAt } from './reading-text'

/** A head as it is before this visit's cuts, and whether its cc is nominal: from a record, not from a burette. */
export type Present = { readonly head: HeadNow; readonly nominal: boolean }

export function headNow(dossier: Dossier): Present {
  const { visit, label, casting, readings } = dossier
  const measured = [...ccBeforeCut(readings, cutFactsOf(dossier).burette, dossier.changes).chambers.values()].map(
    (chamber) => chamber.meanCc,
  )
  const nominalCc = visit.presentCc ?? casting.nominalCc
  const corners = cornersBefore(readings)
  const thinnestAt = (edge: 'intake' | 'exhaust') => thinnest([corners[`${edge}-1`], corners[`${edge}-2`]])
  return {
    head: {
      tag: label,
      chambersCc: dossier.facts.flatDeck
        ? []
        : measured.length > 0
          ? measured
          : nominalCc === undefined
            ? []
            : [nominalCc],
      thicknessIn: thinnest(Object.values(corners)),
      removedBeforeIn: dossier.removedBeforeIn,
      metalGone: dossier.metalGone.ok ? dossier.metalGone.value : null,
      edgeThicknessIn: { intake: thinnestAt('intake'), exhaust: thinnestAt('exhaust') },
      chambers: dossier.chambers,
      seatReadings: seatsBefore(readings),
      ...(dossier.facts.flatDeck ? { flatDeck: flatDeckBefore(readings) } : {}),
    },
    nominal: measured.length === 0 && !dossier.facts.flatDeck,
  }
}

/** Valves, injectors and what a burette read over them, before any cut of this visit. */
function flatDeckBefore(readings: Dossier['readings']): NonNullable<HeadNow['flatDeck']> {
  const read = (kind: ReadingKind) =>
    Object.fromEntries(valuedAt(readings, 'seat-before', kind).map(({ point, value }) => [point, value]))
  return { recessionIn: read('recession'), protrusionIn: read('protrusion'), chamberCc: read('deck-cc') }
}

function thinnest(read: readonly (number | null | undefined)[]): number | null {
  const known = read.filter((valueIn) => typeof valueIn === 'number')
  return known.length === 0 ? null : Math.min(...known)
}
