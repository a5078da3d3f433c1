import { wantedFigures, wantedKeys, type KeptFigure, type WantedFigures, type WantedKey } from './figures'

/** Where a wanted figure is asked, the nearest first: what is said of this very head goes before what is said of its job. */
export const wantedPlaces = ['head', 'job', 'casting', 'shop'] as const
export type WantedPlace = (typeof wantedPlaces)[number]

export type WantedFigure = KeptFigure & { readonly from: WantedPlace }

/** The wanted figures of one head, each with where it comes from; what nobody has said is left out. */
export type Wanted = Readonly<Partial<Record<WantedKey, WantedFigure>>>

/** What belongs to one figure: least and most of a guide's clearance are one. */
const kinOf = (key: WantedKey): readonly WantedKey[] => {
  const { group, port } = wantedFigures[key]
  return wantedKeys.filter((other) => wantedFigures[other].group === group && wantedFigures[other].port === port)
}

const kin = new Map(wantedKeys.map((key) => [key, kinOf(key)]))

/**
 * The wanted figures of a head: each from the nearest place that has it, in the unit of its quantity.
 *
 * @param places what each says; least and most of one clearance come from one place, so that no range is made of two
 * @returns what nobody has said is left out
 *
 * By definition: head, else job, else casting record, else shop.
 * Example: seat width 0.060 in on the job, 0.055 in on the casting record → 0.060 in, from the job.
 */
export function wantedOf(places: Readonly<Record<WantedPlace, WantedFigures>>): Wanted {
  return Object.fromEntries(
    wantedKeys.flatMap((key) => {
      const from = wantedPlaces.find((place) => kin.get(key)?.some((one) => places[place][one] !== undefined))
      const figure = from && places[from][key]
      return from && figure ? [[key, { ...figure, from }]] : []
    }),
  )
}
