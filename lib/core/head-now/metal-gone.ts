import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import type { CornerName } from '../straightness/corner-point'
import { cornerNames, cornersFit, edgesCut, type Corners, type Deck } from '../straightness/corners-fit'
import { factOf } from '../units/fact-of'
import { formatThou } from '../units/format-figure'
import { flatGone, goneAtCornerIn, goneByCut, mostGoneIn, sumOfGone, type Gone, type KnownCut } from './gone'

export type MetalGoneInput = {
  readonly newThicknessIn: number | null
  /** Thickness now, gauged with the head on its deck; a corner that was not read is left out. */
  readonly corners: Corners
  /** Its size, and where its corners are touched. */
  readonly deck: Omit<Deck, 'deepEdge'>
  /** Cuts since the figure typed as removed before; none before this job's own. */
  readonly knownCuts: readonly KnownCut[]
  /** "Removed before this job" as typed; null: blank, which is unknown and not none. */
  readonly removedBeforeIn: number | null
  /** Never cut: nothing was removed before. */
  readonly isNew: boolean
  /** What was gone when this head last left this shop, by what was cut here and known before; null or left out: not known. */
  readonly earlier?: EarlierGone | null
}

export type EarlierGone = { readonly gone: Gone; readonly takenAsFlat: boolean }

/** Two ways to the figure that do not agree, at the corner where they differ most. */
export type GoneDiffers = {
  readonly corner: CornerName
  readonly byCornersIn: number
  readonly bySumIn: number
}

export type MetalGone = {
  readonly gone: Gone
  /**
   * `corners`: thickness now against new; `sum`: the cuts known and what was typed; `visits`: this head's earlier cuts here;
   * `new`: never cut before.
   */
  readonly by: 'corners' | 'sum' | 'visits' | 'new'
  /** The typed figure is taken as flat: nobody measured whether it was. */
  readonly takenAsFlat: boolean
  /** Not null: thickness and known cuts disagree, and one of them is wrong. */
  readonly differs: GoneDiffers | null
}

/** Thickness and known cuts may differ by this much before somebody is asked, in inches. */
export const goneAgreesIn = 0.003

/**
 * Metal gone from a deck since new, by the best that is known.
 *
 * @param input thickness 0.3–12 in, milled width 1–20 in, length 1–60 in, removed before 0–1 in, cuts 0–0.5 in
 * @returns depths at both edges in inches; refused as `missing` when neither the new thickness with the corners nor the
 *   metal removed before is known, as `contradiction` when a corner is thicker than new by more than 3 thou and nothing
 *   else is known
 *
 * First the corners: new thickness less thickness now, brought square to the new deck (÷ cos Φ), gives the plane of all
 * that is gone, its taper too, and covers heads cut elsewhere at an unknown angle. Else the known cuts and what was
 * typed, taken as flat; where nothing was typed, what this head had lost when it last left this shop. Where both are known and differ by more than 3 thou at a corner, both are given; a figure that
 * was typed from these corners is not held against them.
 * Example: 4.500 new, 4.480 at all four corners → 0.020 at both edges.
 * Derived: the plane through the losses at the corners.
 */
export function metalGone(input: MetalGoneInput): Result<MetalGone> {
  const sum = goneBySum(input)
  if (!sum.ok) return sum
  const corners = goneByCorners(input)
  const found = corners.ok ? ok(byCorners(input, corners.value, sum.value)) : bySum(input, sum.value, corners)
  if (!found.ok) return found
  const most = knownFacts({ goneIn: factOf('metal removed since new', mostGoneIn(found.value.gone), 'removed') })
  return most.ok ? found : most
}

function byCorners(input: MetalGoneInput, gone: Gone, sum: Gone | null): MetalGone {
  const differs = sum === null || typedFromCorners(input) ? null : worstDifference(gone, sum)
  return { gone, by: 'corners', takenAsFlat: false, differs }
}

/** The corners give nothing, or something that cannot be: then both are shown. */
function bySum(
  input: MetalGoneInput,
  gone: Gone | null,
  corners: Extract<Result<Gone>, { ok: false }>,
): Result<MetalGone> {
  const { code } = corners.refusal
  if (gone === null || (code !== 'missing' && code !== 'contradiction')) return corners
  const earlier = earlierOf(input)
  const by = earlier ? 'visits' : input.isNew && input.knownCuts.length === 0 ? 'new' : 'sum'
  const worst = code === 'contradiction' ? thickest(input) : null
  const differs = worst && { ...worst, bySumIn: goneAtCornerIn(gone, worst.corner) }
  return ok({ gone, by, takenAsFlat: earlier?.takenAsFlat ?? (input.removedBeforeIn ?? 0) > 0, differs })
}

/** What was typed says all that is gone, the earlier cuts here among it. */
const earlierOf = ({ removedBeforeIn, earlier }: MetalGoneInput): EarlierGone | null =>
  removedBeforeIn === null ? (earlier ?? null) : null

/** Null: what was removed before is not known. */
function goneBySum(input: MetalGoneInput): Result<Gone | null> {
  const { knownCuts, removedBeforeIn, isNew } = input
  const beforeIn = removedBeforeIn ?? (isNew ? 0 : null)
  for (const { flatIn, angleIn } of knownCuts) {
    const depths = knownFacts({
      flatIn: factOf('flat part', flatIn, 'cutDepth'),
      angleIn: factOf('angle part', angleIn, 'cutDepth'),
    })
    if (!depths.ok) return depths
  }
  const earlier = earlierOf(input)
  if (earlier) return ok(sumOfGone([earlier.gone, ...knownCuts.map(goneByCut)]))
  if (beforeIn === null) return ok(null)
  const before = knownFacts({ removedBeforeIn: factOf('removed before this job', beforeIn, 'removed') })
  return before.ok ? ok(sumOfGone([flatGone(beforeIn), ...knownCuts.map(goneByCut)])) : before
}

function goneByCorners(input: MetalGoneInput): Result<Gone> {
  const { newThicknessIn, corners } = input
  const read = cornerNames.filter((name) => typeof corners[name] === 'number')
  if (newThicknessIn === null || read.length === 0) return needsEither
  const possible = knownFacts({
    newThicknessIn: factOf('new head thickness', newThicknessIn, 'thickness'),
    ...Object.fromEntries(read.map((name) => [name, factOf(`thickness at ${name}`, corners[name], 'thickness')])),
  })
  if (!possible.ok) return possible
  // Measured from the intake edge: deep at the exhaust edge is what the fit calls positive.
  const deck: Deck = { ...input.deck, deepEdge: 'exhaust' }
  const whole = Object.fromEntries(cornerNames.map((name) => [name, newThicknessIn]))
  const fit = cornersFit(deck, whole, corners)
  const gone = fit.ok ? planeGone(fit.value) : edgesGone(edgesCut(deck, whole, corners))
  if (gone === null) return needsEither
  const worst = thickest(input)
  if (worst === null) return ok(gone)
  return refuse(
    'contradiction',
    `The head is ${formatThou(-worst.byCornersIn)} thicker at a corner than the new thickness says: measure it again, or correct the new thickness.`,
  )
}

const needsEither = refuse('missing', 'Needs the new head thickness with the corners, or the metal removed before.', {
  needs: ['thicknessNewIn', 'removedBeforeIn'],
})

const planeGone = (fit: { readonly flatIn: number; readonly angleIn: number; readonly taperIn: number }): Gone => ({
  atIntakeEdgeIn: fit.flatIn,
  atExhaustEdgeIn: fit.flatIn + fit.angleIn,
  taperIn: fit.taperIn,
})

const edgesGone = (edges: { readonly shallowIn: number; readonly deepIn: number } | null): Gone | null =>
  edges && { atIntakeEdgeIn: edges.shallowIn, atExhaustEdgeIn: edges.deepIn, taperIn: 0 }

/** The corner that is most above the new thickness, when that is more than a gauge can be off. */
function thickest({ newThicknessIn, corners }: MetalGoneInput): Pick<GoneDiffers, 'corner' | 'byCornersIn'> | null {
  const lost = cornerNames.flatMap((corner) => {
    const now = corners[corner]
    return typeof now === 'number' && newThicknessIn !== null ? [{ corner, byCornersIn: newThicknessIn - now }] : []
  })
  const worst = lost.toSorted((a, b) => a.byCornersIn - b.byCornersIn)[0]
  return worst && worst.byCornersIn < -goneAgreesIn ? worst : null
}

/** A figure is typed to the thou, or to half of one. */
const typedToIn = 0.0006

/** "New thickness less what you measure": such a figure says nothing that the corners do not say. */
function typedFromCorners({ newThicknessIn, corners, removedBeforeIn }: MetalGoneInput): boolean {
  if (newThicknessIn === null || removedBeforeIn === null) return false
  return cornerNames.some((name) => {
    const now = corners[name]
    return typeof now === 'number' && Math.abs(newThicknessIn - now - removedBeforeIn) <= typedToIn
  })
}

function worstDifference(byCorners: Gone, bySum: Gone): GoneDiffers | null {
  const all = cornerNames.map((corner) => ({
    corner,
    byCornersIn: goneAtCornerIn(byCorners, corner),
    bySumIn: goneAtCornerIn(bySum, corner),
  }))
  const worst = all.reduce((a, b) =>
    Math.abs(b.byCornersIn - b.bySumIn) > Math.abs(a.byCornersIn - a.bySumIn) ? b : a,
  )
  return Math.abs(worst.byCornersIn - worst.bySumIn) > goneAgreesIn + 1e-9 ? worst : null
}
