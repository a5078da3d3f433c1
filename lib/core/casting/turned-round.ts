import { castingFigures, type CastingFigureKey } from './figures'

/** Places across a head that a record counts from the shallow edge. */
export const placesAcross = [
  'openingCentreIn',
  'landXIn',
  'intakeValveXIn',
  'exhaustValveXIn',
  'injectorXIn',
  'portXIn',
  'dowelXIn',
  'rockerXIn',
  'camXIn',
] as const satisfies readonly CastingFigureKey[]

/** As much of a casting record as its places are told by; lengths in inches. */
export type RecordPlaces = {
  readonly deepEdge: string
  readonly figures: readonly { readonly form: string; readonly key: string; readonly value: number }[]
  readonly outlines: readonly { readonly form: string; readonly points: string }[]
  readonly bolts: readonly { readonly label: string; readonly xIn: number | null }[]
}

/**
 * Places of a record that would lie at the other side of the head, since its deep edge is changed and they are not: they
 * count from the shallow edge, which is another one then.
 *
 * @returns by their names on record; empty when the deep edge stays, or when each place was entered anew
 *
 * Example: valve 3.0 in from the intake edge of 7, deep edge changed to the intake edge → it would lie 4.0 from there.
 * By definition: the same figure before and after, with the edges changed.
 */
export function placesTurnedRound(before: RecordPlaces, after: RecordPlaces): string[] {
  if (before.deepEdge === after.deepEdge) return []
  const widthIn = after.figures.find(({ key }) => key === 'milledWidthIn')?.value
  // What lies in the middle is as far from either edge.
  const inMiddle = (xIn: number): boolean => widthIn !== undefined && Math.abs(2 * xIn - widthIn) < 1e-6
  const figures = placesAcross.filter((key) =>
    before.figures.some(
      (was) => was.key === key && !inMiddle(was.value) && after.figures.some((now) => isSame(was, now)),
    ),
  )
  const hasOutline = before.outlines.some((was) =>
    after.outlines.some((now) => now.form === was.form && now.points === was.points),
  )
  const bolts = before.bolts.filter(
    (was) =>
      was.xIn !== null &&
      !inMiddle(was.xIn) &&
      after.bolts.some((now) => now.label === was.label && now.xIn === was.xIn),
  )
  return [
    ...figures.map((key) => castingFigures[key].label),
    ...(hasOutline ? ['outline of the opening'] : []),
    ...bolts.map(({ label }) => `bolt hole ${label}`),
  ]
}

type Figure = RecordPlaces['figures'][number]

const isSame = (was: Figure, now: Figure): boolean =>
  was.key === now.key && was.form === now.form && was.value === now.value
