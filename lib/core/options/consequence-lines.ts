import type { IntakeSide } from './intake-side'
import type { DeckCut } from '../clearance/rigid-motion'
import type { Result } from '../errors'
import { gapWording } from '../intake/face-cut'
import { formatThou } from '../units/format-figure'
import { isMeasurable } from '../units/least-measured'
import type { Consequences } from './consequences'
import type { FlatDeckHeadPlan } from '../flat-deck/plan-of-heads'
import { pointLabel } from '../readings/points'
import { beforeAfterWords, injectorNote, valveNote } from './flat-deck-words'
import { groundWords } from './ground-words'
import { ports, type Port } from './valve-consequences'

export type ConsequenceLine = {
  readonly label: string
  /** '' as long as it is not known. */
  readonly value: string
  readonly note: string
  /** The record's figures that would give it; empty when it is known or cannot be had. */
  readonly needs: readonly string[]
  /** A figure past its limit. */
  readonly caution: boolean
}

export type ConsequenceGroup = { readonly title: string; readonly lines: readonly ConsequenceLine[] }

export type LineWords = {
  readonly cut: DeckCut
  readonly deepEdge: 'intake' | 'exhaust'
  readonly follows: Consequences
  readonly ptvLeastIn: Readonly<Record<Port, number>>
  readonly sealingMarginIn: number
  /** Flat-deck heads, valve by valve; left out or null: heads with chambers. */
  readonly flatDeck?: { readonly heads: readonly FlatDeckHeadPlan[] } | null
}

/** All that follows from a cut in the words and units of the shop, for every screen and paper that shows it. */
export function consequenceLines(words: LineWords): readonly ConsequenceGroup[] {
  return [
    { title: 'Engine', lines: [ratioLine(words.follows)] },
    { title: 'Valves and pistons', lines: ports.flatMap((port) => pistonLines(words, port)) },
    ...flatDeckGroups(words),
    { title: 'Seats', lines: words.flatDeck ? [] : ports.flatMap((port) => seatLines(words, port)) },
    { title: 'Intake side', lines: intakeLines(words) },
    { title: 'Bolts and dowels', lines: boltLines(words) },
    { title: 'Valve train', lines: trainLines(words) },
  ].filter(({ lines }) => lines.length > 0)
}

/** Every valve and every injector of flat-deck heads, before and after. */
const flatDeckGroups = ({ flatDeck }: LineWords): ConsequenceGroup[] =>
  (flatDeck?.heads ?? []).map(({ tag, after }) => ({
    title: `Valves and injectors, ${tag}`,
    lines: [
      ...(after?.valves ?? []).map((valve) => ({
        label: `Valve, ${pointLabel(valve.valve)}`,
        value: beforeAfterWords(valve.beforeIn, valve.afterIn),
        note: valveNote(valve),
        needs: [],
        caution: isPast(valve.judged),
      })),
      ...(after?.injectors ?? []).map((injector) => ({
        label: `Injector, chamber ${injector.chamber}`,
        value: beforeAfterWords(injector.beforeIn, injector.afterIn),
        note: injectorNote(injector),
        needs: [],
        caution: isPast(injector.judged),
      })),
    ],
  }))

const isPast = ({ state }: { readonly state: string }): boolean => state === 'under' || state === 'over'

/** Two notes side by side never run together. */
const joined = (...notes: readonly string[]): string => notes.filter((note) => note !== '').join('; ')

type Said = { readonly value: string; readonly note?: string; readonly caution?: boolean }

function line<T>(label: string, found: Result<T>, say: (value: T) => Said): ConsequenceLine {
  if (found.ok) {
    const { value, note = '', caution = false } = say(found.value)
    return { label, value, note, needs: [], caution }
  }
  const { code, needs = [], message } = found.refusal
  return {
    label,
    value: '',
    note: code === 'missing' ? '' : message,
    needs: code === 'missing' ? needs : [],
    caution: false,
  }
}

function ratioLine({ ratioBefore, ratioAfter }: Consequences): ConsequenceLine {
  return line('Compression ratio', ratioAfter, (after) => ({
    value: after.toFixed(2),
    note: ratioBefore.ok ? `before ${ratioBefore.value.toFixed(2)}` : '',
  }))
}

function pistonLines({ follows, ptvLeastIn }: LineWords, port: Port): ConsequenceLine[] {
  const { angleAfterDeg, pistonToValve } = follows[port]
  return [
    line(`${named(port)} valve angle`, angleAfterDeg, (deg) => ({
      // An upright valve has no sign.
      value: `${(Math.abs(deg) < 0.005 ? 0 : deg).toFixed(2)}°`,
    })),
    line(`Piston to ${port} valve`, pistonToValve, ({ lossIn, remainingIn }) => ({
      value: lossIn < 0 ? `gains ${formatThou(-lossIn)}` : `loses ${formatThou(lossIn)}`,
      note:
        remainingIn === null
          ? 'estimate against a flat crown: check at assembly'
          : `${remainingIn.toFixed(3)} in left, the shop asks ${ptvLeastIn[port].toFixed(3)}; check at assembly`,
      caution: remainingIn !== null && remainingIn < ptvLeastIn[port],
    })),
  ]
}

function seatLines({ follows, sealingMarginIn }: LineWords, port: Port): ConsequenceLine[] {
  const { topCut, insert, sealing } = follows[port]
  return [
    line(`${named(port)} top cut lost`, topCut, ({ lostShare, nearest }) => ({
      value: `${Math.round(lostShare * 100)} %`,
      note: lostShare > 0 ? `begins on the ${nearest === 'all round' ? 'whole circle' : `${nearest} side`}` : '',
    })),
    line(`${named(port)} seat to the deck`, sealing, (found) => ({
      value: found.marginIn > 0 ? formatThou(found.marginIn) : `cut through by ${formatThou(-found.marginIn)}: hold`,
      note: joined(`at the sealing line; minimum ${formatThou(sealingMarginIn)}`, groundWords(found)),
      caution: found.marginIn < sealingMarginIn,
    })),
    line(`${named(port)} insert`, insert, ({ cutterMeetsInsert, where }) => ({
      value: cutterMeetsInsert ? 'the cutter meets it' : 'clear',
      note: cutterMeetsInsert && where !== null && where !== 'all round' ? `on the ${where} side` : '',
    })),
  ]
}

function intakeLines({ follows }: LineWords): ConsequenceLine[] {
  const { intakeSide } = follows
  const side = line('Off the intake side', intakeSide, ({ sideIn, notes, doubtful }) => {
    const said = offOrGap(sideIn)
    return { ...said, note: joined(said.note ?? '', ...notes.filter((note) => note !== said.note)), caution: doubtful }
  })
  if (!intakeSide.ok) return [side]
  const { railsIn, face } = intakeSide.value
  const rails = railsIn === null ? [] : [line('Off the manifold rails', intakeSide, () => offOrGap(railsIn))]
  return [side, ...rails, ...(face === null ? [] : [line('Face re-cut, deck end', intakeSide, () => faceEnds(face))])]
}

const offOrGap = (offIn: number): Said =>
  offIn < 0 ? { value: `gap of ${formatThou(-offIn)}`, note: gapWording } : { value: formatThou(offIn) }

const faceEnds = (face: NonNullable<IntakeSide['face']>): Said => ({
  value: formatThou(face.deckEndIn),
  note: joined(
    `${formatThou(face.coverEndIn)} at the cover end`,
    face.gapIn > 0 ? `gap of ${formatThou(face.gapIn)} left` : '',
  ),
})

function boltLines({ follows, deepEdge, cut }: LineWords): ConsequenceLine[] {
  const shallow = deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  const slots = line('Bolt holes', follows.boltHole, ({ slotIn, slotToward, wholeLean }) => ({
    value: isMeasurable(slotIn) ? `slot ${formatThou(slotIn)}` : 'bolts pass',
    note: joined(
      slotToward && isMeasurable(slotIn)
        ? `at the top, toward the ${slotToward === 'shallow' ? shallow : deepEdge} edge`
        : '',
      wholeLean ? '' : 'earlier cuts not known and not counted',
    ),
  }))
  const spot = line('Bolt seats, high side', follows.spotFaceIn, (depthIn) => ({
    value: isMeasurable(depthIn) ? formatThou(depthIn) : 'none',
  }))
  const leans = cut.angleIn > 0 || leansMeasurably(follows)
  return [
    ...(leans ? [slots, spot] : []),
    line('Bolt reach', follows.boltReach, ({ leftIn, bottoms }) => ({
      value: bottoms ? 'bottoms' : `${formatThou(leftIn)} left`,
      note: 'in a blind hole; bolts and torque as the maker says',
      caution: bottoms,
    })),
    line('Dowels', follows.dowelFit, ({ leftIn, bottoms }) => ({
      value: bottoms ? 'bottom' : `${formatThou(leftIn)} left`,
      caution: bottoms,
    })),
  ]
}

/** Corners that differ by the scatter of a gauge are a flat deck. */
function leansMeasurably({ boltHole, spotFaceIn }: LineWords['follows']): boolean {
  const hole = boltHole.ok ? boltHole.value : { slotIn: 0, leanIn: 0 }
  return isMeasurable(hole.slotIn) || isMeasurable(spotFaceIn.ok ? spotFaceIn.value : hole.leanIn)
}

function trainLines({ follows }: LineWords): ConsequenceLine[] {
  const rocker = line('Rocker stand comes down', follows.rocker, ({ downIn }) => ({
    value: formatThou(downIn),
    note: 'the pushrod is longer by as much',
  }))
  if (follows.cam === null) return [rocker]
  const cam = line('Cam comes down', follows.cam, ({ downIn, slackIn, note }) => ({
    value: formatThou(downIn),
    note: `${formatThou(slackIn)} of chain or belt slack. ${note}`,
  }))
  return [cam]
}

const named = (port: Port): string => (port === 'intake' ? 'Intake' : 'Exhaust')
