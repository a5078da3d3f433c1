import type { CastingFacts } from '@/lib/core/casting/figures'
import type { Result } from '@/lib/core/errors'
import { metalGone, type EarlierGone, type MetalGone } from '@/lib/core/head-now/metal-gone'
import type { SeatReading } from '@/lib/core/head-now/seat-now'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { cornersOf, type Corners } from '@/lib/core/straightness/corners-fit'
import type { VisitRecord } from '@/lib/data/visit-records'
import { deckOf } from './route-facts'
import { valuedAt } from './reading-text'

type Readings = readonly EffectiveReading[]

/** The corners as they were read before this visit's cuts, the last of each. */
export const cornersBefore = (readings: Readings): Corners => cornersOf(valuedAt(readings, 'thickness', 'thickness'))

/** Thickness when new: this very head's own where it is known, else its casting's; null: nobody knows. */
export const newThicknessIn = ({ head }: Pick<VisitRecord, 'head'>, casting: CastingFacts): number | null =>
  head.newThicknessIn ?? casting.thicknessNewIn ?? null

/** Metal gone since new before this visit's cuts, at both edges, with how it is known. */
export function metalGoneOf(
  visit: VisitRecord,
  casting: CastingFacts,
  readings: Readings,
  settings: ShopSettings,
  earlier: EarlierGone | null,
): Result<MetalGone> {
  return metalGone({
    newThicknessIn: newThicknessIn(visit, casting),
    corners: cornersBefore(readings),
    deck: deckOf(visit, casting, settings),
    knownCuts: [],
    removedBeforeIn: valuedAt(readings, 'thickness', 'removed-before').at(-1)?.value ?? null,
    isNew: !visit.used && visit.source !== 'bought-cut',
    earlier,
  })
}

/** Seats as they were read before this visit's cuts, the last of each valve. */
export function seatsBefore(readings: Readings): readonly SeatReading[] {
  const byValve = new Map(valuedAt(readings, 'seat-before', 'seat-depth').map(({ point, value }) => [point, value]))
  return [...byValve].map(([valve, depthFromDeckNowIn]) => ({ valve, depthFromDeckNowIn }))
}
