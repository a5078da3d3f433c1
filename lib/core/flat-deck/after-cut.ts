import type { CastingFacts } from '../casting/figures'
import type { DeckCut } from '../clearance/rigid-motion'
import { depthAt } from '../cut/depth-at'
import { ok, type Result } from '../errors'
import { givenFacts, knownFacts } from '../known-facts'
import { meanOrNull } from '../mean'
import { chamberOf, portOf, type Port } from '../readings/valves'
import { factOf } from '../units/fact-of'
import { flatDeckLimitsOf, judgeByLimits, type Judged, type MakerLimits } from './maker-limits'
import { flatDeckVolumeAfterCc, pocketsCc, type Pocket } from './pockets'
import { protrusionAfter } from './protrusion'
import { recessionAfter, sinkForRecession } from './recession'

/** A flat-deck head as it was read before this visit's cuts. */
export type FlatDeckNow = {
  /** Recession by valve ("1-intake", "1-intake-2"), protrusion by chamber ("1"), cc by chamber. */
  readonly recessionIn: Readonly<Record<string, number>>
  readonly protrusionIn: Readonly<Record<string, number>>
  readonly chamberCc?: Readonly<Record<string, number>>
}

export type ValveAfter = {
  readonly valve: string
  readonly port: Port
  readonly beforeIn: number
  readonly afterIn: number
  readonly limits: MakerLimits
  readonly judged: Judged
  /** What seat work must sink it beyond what is planned, to reach the least; 0: nothing. Refused: no seat work does it. */
  readonly sinkMoreIn: Result<number>
}

export type InjectorAfter = {
  readonly chamber: string
  readonly beforeIn: number
  readonly afterIn: number
  readonly limits: MakerLimits
  readonly judged: Judged
}

export type FlatDeckAfter = {
  readonly valves: readonly ValveAfter[]
  readonly injectors: readonly InjectorAfter[]
  /** What the head holds over one piston, the mean of its chambers; null: a valve size or a recession is not known. */
  readonly beforeCc: number | null
  readonly afterCc: number | null
}

/**
 * What a cut and the seat work after it make of a flat-deck head: every valve's recession, every injector's protrusion,
 * each against the engine maker's limits, and the volume of the valve pockets.
 *
 * @param now recession and protrusion −0.25–0.5 in, cc 0–400; @param casting its record
 * @param cut 0–0.5 in, the milled width and the places only where it leans; @param sinkIn 0–0.25 in for every valve
 * @returns lengths in inches, volumes in cc; only what was read is judged
 *
 * Formulas stand with `recessionAfter`, `protrusionAfter` and `flatDeckVolumeAfterCc`.
 * Example: 0.040 and 0.060 before, 0.012 flat → recession 0.028, protrusion 0.072.
 * Derived: as those.
 */
export function flatDeckAfter(
  now: FlatDeckNow,
  casting: CastingFacts,
  cut: DeckCut,
  sinkIn: number,
): Result<FlatDeckAfter> {
  const given = givenFacts(limitFacts(casting))
  if (!given.ok) return given
  const valves: ValveAfter[] = []
  for (const [valve, beforeIn] of Object.entries(now.recessionIn)) {
    const after = valveAfter({ valve, beforeIn }, casting, cut, sinkIn)
    if (!after.ok) return after
    valves.push(after.value)
  }
  const injectors: InjectorAfter[] = []
  const limits = flatDeckLimitsOf(casting).protrusion
  for (const [chamber, beforeIn] of Object.entries(now.protrusionIn)) {
    const cutIn = cutAtPlace(cut, casting.injectorXIn, 'injectorXIn')
    const afterIn = cutIn.ok ? protrusionAfter(beforeIn, cutIn.value) : cutIn
    if (!afterIn.ok) return afterIn
    injectors.push({ chamber, beforeIn, afterIn: afterIn.value, limits, judged: judgeByLimits(afterIn.value, limits) })
  }
  return ok({ valves, injectors, ...volumes(now, casting, valves) })
}

/** The engine maker's limits are typed like any other figure, and held to what can be. */
const limitFacts = (casting: CastingFacts) => ({
  intakeRecessionLeastIn: factOf('minimum recession, intake', casting.intakeRecessionLeastIn, 'recession'),
  intakeRecessionMostIn: factOf('maximum recession, intake', casting.intakeRecessionMostIn, 'recession'),
  exhaustRecessionLeastIn: factOf('minimum recession, exhaust', casting.exhaustRecessionLeastIn, 'recession'),
  exhaustRecessionMostIn: factOf('maximum recession, exhaust', casting.exhaustRecessionMostIn, 'recession'),
  injectorProtrusionLeastIn: factOf('minimum protrusion', casting.injectorProtrusionLeastIn, 'protrusion'),
  injectorProtrusionMostIn: factOf('maximum protrusion', casting.injectorProtrusionMostIn, 'protrusion'),
})

type Read = { readonly valve: string; readonly beforeIn: number }

function valveAfter(
  { valve, beforeIn }: Read,
  casting: CastingFacts,
  cut: DeckCut,
  sinkIn: number,
): Result<ValveAfter> {
  const port = portOf(valve)
  const cutIn = cutAtPlace(cut, casting[`${port}ValveXIn`], `${port}ValveXIn`)
  if (!cutIn.ok) return cutIn
  const leaning = { valveAngleDeg: casting[`${port}ValveAngleDeg`], cantDeg: casting[`${port}ValveCantDeg`] }
  const afterIn = recessionAfter(beforeIn, cutIn.value, sinkIn, leaning)
  if (!afterIn.ok) return afterIn
  const limits = flatDeckLimitsOf(casting).recession[port]
  return ok({
    valve,
    port,
    beforeIn,
    afterIn: afterIn.value,
    limits,
    judged: judgeByLimits(afterIn.value, limits),
    sinkMoreIn: limits.leastIn === null ? ok(0) : sinkForRecession(afterIn.value, limits.leastIn, leaning),
  })
}

/** A flat cut takes the same everywhere; a leaning one by the place on record. */
function cutAtPlace(cut: DeckCut, xIn: number | undefined, name: string): Result<number> {
  if (cut.angleIn === 0) return depthAt(cut, 0)
  const place = knownFacts({ [name]: factOf('place across the deck', xIn, 'acrossDeck') })
  return place.ok ? depthAt(cut, place.value[name] ?? 0) : place
}

function volumes(
  { chamberCc = {} }: FlatDeckNow,
  casting: CastingFacts,
  valves: readonly ValveAfter[],
): Pick<FlatDeckAfter, 'beforeCc' | 'afterCc'> {
  const chambers = [...new Set(valves.map(({ valve }) => chamberOf(valve)))]
  const found = chambers.map((chamber) => {
    const own = valves.filter(({ valve }) => chamberOf(valve) === chamber)
    const pockets = (of: 'beforeIn' | 'afterIn'): Pocket[] =>
      own.map((valve) => ({ diameterIn: casting[`${valve.port}ValveIn`], recessionIn: valve[of] }))
    const readCc = chamberCc[chamber] ?? null
    return {
      before: readCc === null ? pocketsCc(pockets('beforeIn')) : ok(readCc),
      after: flatDeckVolumeAfterCc(readCc, pockets('beforeIn'), pockets('afterIn')),
    }
  })
  const known = found.flatMap(({ before, after }) =>
    before.ok && after.ok ? [{ beforeCc: before.value, afterCc: after.value }] : [],
  )
  if (known.length < found.length) return { beforeCc: null, afterCc: null }
  return {
    beforeCc: meanOrNull(known.map(({ beforeCc }) => beforeCc)),
    afterCc: meanOrNull(known.map(({ afterCc }) => afterCc)),
  }
}
