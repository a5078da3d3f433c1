import { boltHoleSlot, spotFaceDepth } from '@/lib/core/clearance/bolt-hole'
import { boltReach, dowelFit } from '@/lib/core/clearance/bolt-reach'
import { pistonToValve, valveAngleAfter } from '@/lib/core/clearance/piston-to-valve'
import { camDrop, installedHeightGrowth, pointDrop, rockerDrop } from '@/lib/core/clearance/point-drop'
import { heightOver, motionOf, movedPoint } from '@/lib/core/clearance/rigid-motion'
import { must } from '@/lib/core/errors'
import { circlePoints, newDeck, rad, type V3 } from '../clearance/vectors'
import { check, type Check } from './check'

const W = 7
const flat = (flatIn: number) => ({ flatIn, angleIn: 0, milledWidthIn: null })
const angled = (flatIn: number, deg: number) => ({
  flatIn,
  angleIn: W * Math.tan(rad(deg)),
  milledWidthIn: W,
})
const deckOf = (cut: ReturnType<typeof angled>) => newDeck(cut.flatIn, cut.angleIn, W)
const vectors = 'vectors'

const degree = angled(0.02, 1)
const places = [
  [0, 4, 0],
  [3, 1, 3.5],
  [6.5, 0.4, 1],
] as const
const motion: readonly Check[] = [
  ...places.flatMap(([x, z, dowel]): readonly Check[] => {
    const [movedX, movedZ] = deckOf(degree).onBlock([x, z], dowel)
    const point = { xIn: x, zIn: z }
    const label = `20 thou and 1°, dowels at ${dowel}: the point (${x}, ${z})`
    return [
      check(
        `${label}, across`,
        vectors,
        [movedX, 'in', 1e-12],
        () => movedPoint(must(motionOf(degree)), dowel, point).xIn,
      ),
      check(`${label}, height`, vectors, [movedZ, 'in', 1e-12], () => heightOver(must(motionOf(degree)), point)),
    ]
  }),
  check(
    'a point 4 in up, 1°: sideways',
    'by hand: about 4·sin 1° = 0.0698',
    [0.0698, 'in', 0.0001],
    () => movedPoint(must(motionOf(angled(0, 1))), 0, { xIn: 0, zIn: 4 }).xIn,
  ),
]

const valve = { xIn: 3.2, zIn: 0.45, diameterIn: 2.02, valveAngleDeg: 23 }
const unknown = { xIn: null, zIn: null, diameterIn: null }

/** Loss of the rim's lowest point, walked round in space, cant and all. */
function walked(cut: ReturnType<typeof angled>, given: typeof valve, cantDeg: number, liftIn: number): number {
  const raw: V3 = [Math.tan(rad(given.valveAngleDeg)), Math.tan(rad(cantDeg)), -1]
  const lift = liftIn / Math.hypot(...raw)
  const centre: V3 = [given.xIn + lift * raw[0], lift * raw[1], given.zIn + lift * raw[2]]
  const rim = circlePoints(centre, raw, given.diameterIn / 2)
  const deck = deckOf(cut)
  return Math.min(...rim.map(([, , z]) => z)) - Math.min(...rim.map(([x, , z]) => deck.height([x, z])))
}
/** Degrees of the cut, of the valve, of its cant, lift, and place across. */
const valves = [
  [1, 23, 0, 0.45, 3.2],
  [1, -23, 0, 0.45, 3.2],
  [0.5, 15, 4, 0.6, 1.5],
  [2, 0.7, 0, 0.2, 5.5],
] as const
const flatThirty = () =>
  must(pistonToValve({ cut: flat(0.03), valve: { ...unknown, valveAngleDeg: 23 }, liftIn: null }))
const sunk = (cut: ReturnType<typeof angled> | ReturnType<typeof flat>) =>
  must(pistonToValve({ cut, valve, liftIn: 0.5, sinkIn: 0.01 }))

const pistons: readonly Check[] = [
  check(
    'piston-to-valve, 30 thou flat: loss',
    'common practice: a flat cut takes its own depth',
    [0.03, 'in', 0],
    () => flatThirty().lossIn,
  ),
  check(
    'the same at 23°: along the valve’s axis',
    'by hand: 0.030·cos 23°',
    [0.0276, 'in', 0.00005],
    () => flatThirty().alongAxisIn ?? NaN,
  ),
  check(
    'the same: square to it',
    'by hand: 0.030·sin 23°',
    [0.0117, 'in', 0.00005],
    () => flatThirty().sidewaysIn ?? NaN,
  ),
  ...valves.map(([deg, valveAngleDeg, cantDeg, liftIn, xIn]) => {
    const [cut, given] = [angled(0.012, deg), { ...valve, valveAngleDeg, xIn }]
    return check(
      `piston-to-valve, 12 thou and ${deg}°, valve at ${valveAngleDeg}°, cant ${cantDeg}°, lift ${liftIn}`,
      'vectors: the rim walked round in 7,200 steps',
      [walked(cut, given, cantDeg, liftIn), 'in', 1e-6],
      () => must(pistonToValve({ cut, valve: { ...given, cantDeg }, liftIn })).lossIn,
    )
  }),
  check(
    'seat sunk 10 thou at 23°, flat cut: given back',
    'by hand: 0.010·0.920505',
    [0.00920505, 'in', 1e-8],
    () => sunk(flat(0.03)).sinkBackIn,
  ),
  check(
    'the same with 30 thou flat: loss',
    'by hand: 0.030 − 0.00920505',
    [0.02079495, 'in', 1e-8],
    () => sunk(flat(0.03)).lossIn,
  ),
  check(
    'seat sunk 10 thou at 23° after a degree: given back',
    'by hand: 0.010·cos 22° = 0.010·0.927184',
    [0.00927184, 'in', 1e-8],
    () => sunk(angled(0, 1)).sinkBackIn,
  ),
  check(
    '0.120 measured, 30 thou flat: left',
    'by hand: 0.120 − 0.030',
    [0.09, 'in', 1e-12],
    () => must(pistonToValve({ cut: flat(0.03), valve, liftIn: 0.5, measuredIn: 0.12 })).remainingIn ?? NaN,
  ),
  check('valve of 23° after a degree on the side it opens to', 'by hand: 23 − 1', [22, '°', 1e-9], () =>
    valveAngleAfter(angled(0, 1), 23),
  ),
  check('valve of −23° after the same', 'by hand: −23 − 1', [-24, '°', 1e-9], () => valveAngleAfter(angled(0, 1), -23)),
]

const hole = { holeLengthIn: 3.5, holeDiameterIn: 0.5, boltDiameterIn: 0.4375 }
const slot = (deg: number, dowels: boolean) => must(boltHoleSlot({ cut: angled(0.01, deg), ...hole, dowels }))

/** The bolt stands square to the new deck on the hole's axis at the mouth; how far its side stands past the hole's wall. */
function slotByVectors(deg: number): number {
  const { up } = deckOf(angled(0, deg))
  const axisAtTop = (up[0] / up[1]) * 3.5
  return Math.abs(axisAtTop) + 0.4375 / 2 / up[1] - 0.25
}
const bolts: readonly Check[] = [
  check('bolt hole of 3.5 in, 1°: lean', 'by hand: 3.5·sin 1°', [0.0611, 'in', 0.00005], () => slot(1, true).leanIn),
  check(
    '1/2 in hole, 7/16 bolt, dowels, 1°: slot',
    'by hand: 0.061083 − 0.03125',
    [0.029833, 'in', 1e-6],
    () => slot(1, true).slotIn,
  ),
  check(
    'the same',
    'vectors; leaves out no cosines, which are worth 0.0001 in',
    [slotByVectors(1), 'in', 0.0001],
    () => slot(1, true).slotIn,
  ),
  check(
    'the same, without dowels, 2°: slot',
    'by hand: 0.4375 + 0.122148 − 0.5·0.999391',
    [0.0599527, 'in', 1e-6],
    () => slot(2, false).slotIn,
  ),
  check(
    'the same, without dowels, 1°: slot',
    'by hand: 0.4375 + 0.061083 − 0.499924 is less than nothing',
    [0, 'in', 0],
    () => slot(1, false).slotIn,
  ),
  check('spot face of 0.875 in, 1°: deep on its high side', 'by hand: 0.875·tan 1°', [0.0153, 'in', 0.00005], () =>
    spotFaceDepth(angled(0, 1), 0.875),
  ),
  check(
    '83 thou gone, spot face 15, thread left 120 thou: left',
    'by hand: 0.120 − 0.098',
    [0.022, 'in', 1e-12],
    () => must(boltReach(0.083, 0.015, 0.12)).leftIn,
  ),
  check(
    'dowel with 100 thou to spare, 83 gone: left',
    'by hand: 0.100 − 0.083',
    [0.017, 'in', 1e-12],
    () => must(dowelFit(0.083, 0.1)).leftIn,
  ),
]

const [rockerX, rockerZ] = deckOf(degree).onBlock([2, 5], 1)
const above: readonly Check[] = [
  check(
    'rocker stand at (2, 5), 20 thou and 1°: pushrod longer by',
    vectors,
    [5 - rockerZ, 'in', 1e-12],
    () => must(rockerDrop(degree, { xIn: 2, zIn: 5 }, 1)).pushrodLongerIn,
  ),
  check(
    'the same: toward the deep edge',
    vectors,
    [rockerX - 2, 'in', 1e-12],
    () => must(rockerDrop(degree, { xIn: 2, zIn: 5 }, 1)).towardDeepIn ?? NaN,
  ),
  check(
    '30 thou flat: pushrod longer by',
    'common practice: by what was cut',
    [0.03, 'in', 0],
    () => must(rockerDrop(flat(0.03), unknown)).pushrodLongerIn,
  ),
  check(
    '30 thou flat, cam in the head: chain slack in both runs',
    'by hand: 2·0.030',
    [0.06, 'in', 1e-12],
    () => must(camDrop(flat(0.03), unknown)).slackIn,
  ),
  check(
    'port at (0.5, 2), 20 thou and 1°: drop',
    vectors,
    [2 - deckOf(degree).height([0.5, 2]), 'in', 1e-12],
    () => must(pointDrop(degree, { label: 'port', xIn: 0.5, zIn: 2 })).downIn,
  ),
  check(
    'seat sunk 10 thou: installed height grows by',
    'common practice: by the sink, whatever the deck did',
    [0.01, 'in', 0],
    () => installedHeightGrowth(0.01),
  ),
]

export const rigidMotion = { title: '7. The cut head on its block', checks: motion }
export const clearance = {
  title: '8. Valves, pistons, bolts and pushrods',
  checks: [...pistons, ...bolts, ...above],
}
