import type { CastingFacts } from '@/lib/core/casting/figures'
import { motionOf, type Motion } from '@/lib/core/clearance/rigid-motion'
import { ports, type Port } from '@/lib/core/options/valve-consequences'
import { behind, chamberOf, openingOf } from './cut-section-chamber'
import { placeValve } from './cut-section-seats'
import {
  within,
  type CutSectionInput,
  type PlacedValve,
  type SectionGeometry,
  type SectionOpening,
} from './cut-section-types'
import { degrees } from '@/lib/core/units/degrees'

/** For a head whose milled width nobody has measured; the drawing says so. */
const usualWidthIn = 6
/** Above this nothing of a cut is to be seen. */
const usualTopIn = 1.6
const aboveSeatIn = 0.55

const uncut: Motion = { flatIn: 0, slope: 0, angleRad: 0 }

/** Where everything of the section lies, in inches, in the core's frame. */
export function sectionGeometry(input: CutSectionInput): SectionGeometry {
  const { casting, cut } = input
  const known = within(casting.milledWidthIn, 1, 20)
  const widthIn = known ?? usualWidthIn
  const motion = motionOf({ ...cut, milledWidthIn: widthIn })
  const moved = motion.ok ? motion.value : uncut
  const opening = openingOf(input, widthIn)
  const valves = ports.flatMap((port) => placeValve(casting, port, moved, widthIn) ?? [])
  const [a, b] = valves
  const oneBehindOther = a !== undefined && b !== undefined && behind(a, b)
  const highestIn = Math.max(0, ...valves.flatMap(({ circles }) => circles[0]?.ends.map((end) => end.zIn) ?? []))
  return {
    widthIn,
    widthKnown: known !== null,
    topIn: Math.max(usualTopIn, highestIn + aboveSeatIn),
    motion: moved,
    refused: motion.ok ? null : motion.refusal.message,
    angleDeg: angleOf(input, moved, known !== null),
    depthsIn: { shallow: moved.flatIn, deep: moved.flatIn + moved.slope * widthIn },
    opening,
    centreIn: within(casting.openingCentreIn, 0, widthIn),
    valves,
    oneBehindOther,
    ...chamberOf(input, opening, oneBehindOther ? valves.slice(0, 1) : valves, widthIn),
    // A flat deck has no opening, and its valves lie in it.
    missing: input.chamberShape === 'flat-deck' ? [] : missingOf(casting, opening, valves),
  }
}

/** Degrees that were given, or that follow from a width that is known; never from the usual width. */
function angleOf({ cut }: CutSectionInput, motion: Motion, widthKnown: boolean): number | null {
  if (motion.angleRad === 0) return null
  if (cut.angleDeg !== null && Number.isFinite(cut.angleDeg)) return cut.angleDeg
  return widthKnown ? degrees(motion.angleRad) : null
}

function missingOf(casting: CastingFacts, opening: SectionOpening | null, valves: readonly PlacedValve[]): string[] {
  const unplaced = ports.filter((port) => !valves.some((valve) => valve.port === port))
  const ungauged = valves
    .map(({ port }) => port)
    .filter((port) => within(casting[`${port}SeatDepthIn`], -0.5, 1.5) === null)
  return [
    ...(opening === null ? ["the chamber's opening"] : []),
    ...ofPorts(unplaced, 'where the valves sit', (port) => `where the ${port} valve sits`),
    ...ofPorts(ungauged, 'the depths of the seats', (port) => `the depth of the ${port} seat`),
  ]
}

const ofPorts = (list: readonly Port[], both: string, one: (port: Port) => string): string[] =>
  list.length === ports.length ? [both] : list.map(one)
