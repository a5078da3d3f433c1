import fc, { type Arbitrary } from 'fast-check'
import { wantedFigures, wantedKeys, type WantedFigures, type WantedKey } from '@/lib/core/wanted/figures'
import { wantedPlaces, type Wanted, type WantedPlace } from '@/lib/core/wanted/wanted-of'
import { quantities } from '@/lib/core/units/quantities'
import { plain } from '../any-figure'

const kept = (key: WantedKey) => {
  const { least, most, unit } = quantities[wantedFigures[key].quantity]
  return plain(least, most).map((value) => ({ value, text: String(value), unit }))
}

/** What one place may say: any of the figures, some of them absurd. */
export const anyFigures: Arbitrary<WantedFigures> = fc.record(
  Object.fromEntries(wantedKeys.map((key) => [key, kept(key)])),
  { requiredKeys: [] },
)

export const anyWanted: Arbitrary<Wanted> = fc.record(
  Object.fromEntries(
    wantedKeys.map((key) => [
      key,
      fc.tuple(kept(key), fc.constantFrom(...wantedPlaces)).map(([figure, from]) => ({ ...figure, from })),
    ]),
  ),
  { requiredKeys: [] },
)

/** A wanted figure as it is kept, from the job. */
export const figure = (value: number, from: WantedPlace = 'job') => ({ value, text: String(value), unit: '', from })
