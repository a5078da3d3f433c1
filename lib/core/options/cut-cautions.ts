import type { CutCaution, SeatStand } from '../cut/cautions'
import type { Consequences } from './consequences'
import { ports, type Port } from './valve-consequences'

type Least = {
  readonly ptvLeastIn: Readonly<Record<Port, number>>
  readonly sealingMarginIn?: number
  /** Its seats lie in the deck itself: what counts is how deep the valves lie. */
  readonly flatDeck?: object | null
}

/** What of a cut's consequences must be said before anybody agrees to it: only what passes a limit. */
export function cutCautions(follows: Consequences, least: Least): CutCaution[] {
  return [
    ...ports.flatMap((port) => clearanceCaution(follows, port, least.ptvLeastIn[port])),
    ...(least.flatDeck ? [] : ports).flatMap((port) => sealingCaution(follows, port, least.sealingMarginIn ?? 0)),
    ...bottoming(follows),
  ]
}

const bottoming = ({ boltReach, dowelFit }: Consequences): CutCaution[] => [
  ...(boltReach.ok && boltReach.value.bottoms
    ? [{ code: 'bolts-bottom', byIn: -boltReach.value.leftIn } as const]
    : []),
  ...(dowelFit.ok && dowelFit.value.bottoms ? [{ code: 'dowels-bottom' } as const] : []),
]

function clearanceCaution(follows: Consequences, port: Port, leastIn: number): CutCaution[] {
  const found = follows[port].pistonToValve
  if (!found.ok || found.value.remainingIn === null || found.value.remainingIn >= leastIn) return []
  return [{ code: 'piston-to-valve', port, leftIn: found.value.remainingIn, leastIn }]
}

function sealingCaution(follows: Consequences, port: Port, leastIn: number): CutCaution[] {
  const found = follows[port].sealing
  if (!found.ok || found.value.marginIn >= leastIn) return []
  const { marginIn, hold, beforeIn, ground, notRead, tag, notKnownOf } = found.value
  const stand: SeatStand = { ground, notRead, tag, notKnownOf }
  return beforeIn <= 0
    ? [{ code: 'seat-cut-through', port, byIn: -beforeIn, stand }]
    : [{ code: 'seat-near', port, hold, marginIn, leastIn, stand }]
}
