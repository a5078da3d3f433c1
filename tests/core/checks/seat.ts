import { must } from '@/lib/core/errors'
import { insertMarks, sealingMargin, topCutLoss } from '@/lib/core/seat/after-cut'
import type { CircleName, Seat } from '@/lib/core/seat/circles'
import { circlePoints, newDeck, rad, type V3 } from '../clearance/vectors'
import { check, type Check } from './check'

const W = 7
type Cut = { readonly flatIn: number; readonly angleIn: number; readonly milledWidthIn: number }
const cutBy = (flatIn: number, deg = 0): Cut => ({
  flatIn,
  angleIn: W * Math.tan(rad(deg)),
  milledWidthIn: W,
})
const diameters = { insert: 2.25, 'top-cut': 2.1, sealing: 2 }
const offsets = { insert: 0.03, 'top-cut': 0.05, sealing: 0 }
const seatAt = (valveAngleDeg: number, depthIn = 0.02, circle: CircleName = 'top-cut'): Seat => ({
  circles: {
    insert: { diameterIn: diameters.insert, offsetIn: offsets.insert },
    'top-cut': { diameterIn: diameters['top-cut'], offsetIn: offsets['top-cut'] },
    sealing: { diameterIn: diameters.sealing },
  },
  gauge: { depthIn, circle },
  xIn: 3,
  valveAngleDeg,
})

const steps = 72_000

/** Heights of a circle over the new deck, step by step round it; the seat is placed by its gauged circle's lowest point. */
function heights(cut: Cut, valveAngleDeg: number, name: CircleName, depthIn = 0.02): number[] {
  const lean = rad(valveAngleDeg)
  const axis: V3 = [Math.sin(lean), 0, -Math.cos(lean)]
  const points = (of: CircleName, up: number) => {
    const centre: V3 = [3 + offsets[of] * axis[0], 0, up + offsets[of] * axis[2]]
    return circlePoints(centre, axis, diameters[of] / 2, steps)
  }
  const up = depthIn - points('top-cut', 0).reduce((least, [, , z]) => Math.min(least, z), Infinity)
  const deck = newDeck(cut.flatIn, cut.angleIn, W)
  return points(name, up).map(([x, , z]) => deck.height([x, z]))
}
const shareUnder = (all: readonly number[]): number => all.filter((height) => height < 0).length / all.length
const least = (all: readonly number[]): number => all.reduce((a, b) => Math.min(a, b), Infinity)
const walked = 'numeric integration: walked round in 72,000 steps'

/** Flat part, degrees of the cut, degrees of the valve. */
const cuts = [
  [0.03, 0, 15],
  [0.02, 1, 15],
  [0.01, 0.5, -10],
  [0.005, 2, 4],
] as const

const topCuts: readonly Check[] = [
  check(
    'no cut, ring flush with the deck: top cut lost',
    'by hand: none',
    [0, '', 0],
    () => must(topCutLoss(cutBy(0), seatAt(15, 0))).lostShare,
  ),
  check(
    'flat cut to the ring’s centre height: top cut lost',
    'by hand: half',
    [0.5, '', 1e-9],
    () => must(topCutLoss(cutBy(0.02 + 1.05 * Math.sin(rad(15))), seatAt(15))).lostShare,
  ),
  check(
    'flat cut as deep as the far edge: top cut lost',
    'by hand: all',
    [1, '', 0],
    () => must(topCutLoss(cutBy(2.1 * Math.sin(rad(10)) + 1e-9), seatAt(10, 0))).lostShare,
  ),
  check(
    'valve square to the deck, cut 1 thou past the ring: top cut lost',
    'by hand: all at once',
    [1, '', 0],
    () => must(topCutLoss(cutBy(0.021), seatAt(0))).lostShare,
  ),
  check(
    'a quarter of the way up a ring of swing ρ: top cut lost',
    'by hand: acos(1/2)/π = 1/3',
    [1 / 3, '', 1e-9],
    () => must(topCutLoss(cutBy((1.05 * Math.sin(rad(10))) / 2), seatAt(10, 0))).lostShare,
  ),
  ...cuts.map(([flatIn, deg, valveDeg]) =>
    check(
      `${flatIn} flat and ${deg}°, valve at ${valveDeg}°: top cut lost`,
      walked,
      [shareUnder(heights(cutBy(flatIn, deg), valveDeg, 'top-cut')), '', 1e-4],
      () => must(topCutLoss(cutBy(flatIn, deg), seatAt(valveDeg))).lostShare,
    ),
  ),
]

const circles: readonly Check[] = [
  check(
    'gauged 0.100 to the sealing circle, 30 thou flat: margin',
    'by hand: 0.100 − 0.030',
    [0.07, 'in', 1e-12],
    () => must(sealingMargin(cutBy(0.03), seatAt(15, 0.1, 'sealing'))).marginIn,
  ),
  ...cuts.map(([flatIn, deg, valveDeg]) =>
    check(
      `${flatIn} flat and ${deg}°, valve at ${valveDeg}°: sealing margin`,
      walked,
      [least(heights(cutBy(flatIn, deg), valveDeg, 'sealing')), 'in', 1e-8],
      () => must(sealingMargin(cutBy(flatIn, deg), seatAt(valveDeg))).marginIn,
    ),
  ),
  check(
    '0.06 flat, valve at 15°: share of the insert that the cutter meets',
    walked,
    [shareUnder(heights(cutBy(0.06), 15, 'insert')), '', 1e-4],
    () => must(insertMarks(cutBy(0.06), seatAt(15))).share,
  ),
]

export const seat = { title: '8. Top cut, insert, sealing line', checks: [...topCuts, ...circles] }
