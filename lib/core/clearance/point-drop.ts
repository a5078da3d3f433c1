import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { moveOf, motionOf, type DeckCut } from './rigid-motion'

/** A named place on the head that a cut brings down: where it is, and what it is called when it is not known. */
export type NamedPlace = {
  readonly label: string
  readonly xIn: number | null | undefined
  readonly zIn: number | null | undefined
}

export type Drop = {
  /** Along the bore. */
  readonly downIn: number
  /** Toward the deep edge; null: needs the place of the dowels. */
  readonly towardDeepIn: number | null
}

/**
 * How far a place of the head comes down, and sideways, in inches.
 *
 * @param place ±20 in from the shallow edge and above the deck; a flat cut needs neither
 * @param dowelXIn dowels from the shallow edge; only the sideways move of an angle cut needs them
 *
 * By the rigid motion of the cut head. Example: flat 0.030 → down 0.030, sideways 0.
 * Derived: as `moveOf`.
 */
export function pointDrop(cut: DeckCut, place: NamedPlace, dowelXIn?: number | null): Result<Drop> {
  const motion = motionOf(cut)
  if (!motion.ok) return motion
  if (motion.value.angleRad === 0) return ok({ downIn: motion.value.flatIn, towardDeepIn: 0 })
  const facts = knownFacts({
    xIn: factOf(`${place.label} from the shallow edge`, place.xIn, 'length'),
    zIn: factOf(`${place.label} above the deck`, place.zIn, 'length'),
    dowelXIn: factOf('dowels from the shallow edge', dowelXIn ?? 0, 'length'),
  })
  if (!facts.ok) return facts
  return ok(moveOf(motion.value, facts.value, dowelXIn))
}

export type RockerDrop = Drop & {
  /** The pushrod is longer by this as far as the rocker is concerned. */
  readonly pushrodLongerIn: number
}

/**
 * What a cut does to the rocker stand, in inches: it comes down with the head, and the pushrod, which does not, becomes
 * longer by as much. Valve stems come down with the stand, so the rocker's own geometry stays but for the pushrod.
 *
 * Example: flat 0.030 → the pushrod is 0.030 longer.
 * Derived: the pushrod stands on the block and keeps its length.
 */
export function rockerDrop(
  cut: DeckCut,
  rocker: Omit<NamedPlace, 'label'>,
  dowelXIn?: number | null,
): Result<RockerDrop> {
  const drop = pointDrop(cut, { label: 'rocker stand', ...rocker }, dowelXIn)
  return drop.ok ? ok({ ...drop.value, pushrodLongerIn: drop.value.downIn }) : drop
}

export type CamDrop = Drop & {
  /** Chain or belt that becomes slack over the two runs, when they lie along the bore. */
  readonly slackIn: number
  readonly note: string
}

/**
 * What a cut does to a cam in the head, in inches: the cam comes nearer to the crank, each run of chain or belt is
 * shorter by the drop, and the tight run's loss turns the cam back.
 *
 * Assumes runs along the bore. No degrees: these need the pulley. Example: flat 0.030 → 0.060 slack in all.
 * Derived: two runs of the chain, each shorter by the drop.
 */
export function camDrop(cut: DeckCut, cam: Omit<NamedPlace, 'label'>, dowelXIn?: number | null): Result<CamDrop> {
  const drop = pointDrop(cut, { label: 'cam', ...cam }, dowelXIn)
  if (!drop.ok) return drop
  const note = 'Cam timing retards as the head comes down; in degrees: needs the pulley data.'
  return ok({ ...drop.value, slackIn: 2 * drop.value.downIn, note })
}

/**
 * How installed height changes, in inches: by what the seat is sunk, whatever the deck did.
 *
 * Example: sunk 0.010 and the deck cut 0.050 → 0.010.
 * Derived: spring seat and valve stay in one head; only the seat moves along the axis.
 */
export function installedHeightGrowth(sinkIn: number): Result<number> {
  const facts = knownFacts({ sinkIn: factOf('sink of the seat', sinkIn, 'sink') })
  return facts.ok ? ok(facts.value.sinkIn) : facts
}
