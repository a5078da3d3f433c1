import { cutAngleDeg, edgeDepthIn } from '@/lib/core/cut/angle'
import { circleOpening, circleOutline } from '@/lib/core/cut/circle'
import { depthAt } from '@/lib/core/cut/depth-at'
import { draftedVolume } from '@/lib/core/cut/drafted-volume'
import { angleForVolume, flatAtAngle, flatForVolume } from '@/lib/core/cut/inverse'
import { openingOfOutline, type OutlinePoint } from '@/lib/core/cut/outline'
import { angleBeside, depthAtCentroid, flatBeside } from '@/lib/core/cut/split'
import { targetLine, type LineLimit } from '@/lib/core/cut/target-line'
import { seatWorkCc } from '@/lib/core/cut/seat-work'
import { cutVolumeCc, sinkVolumeCc } from '@/lib/core/cut/volume'
import { must } from '@/lib/core/errors'
import { rad } from '../clearance/vectors'
import { cutFromOutline, cutFromRound, cutFromSquare, type SolidCut } from '../cut/solid'
import { check, type Check } from './check'

const W = 7
const derived = 'derived: 16.387064·π/4·3.6²·3.5·tan φ, by hand'
const solid = 'manifold-3d solid'
const round = { diameterIn: 3.6, centreIn: 3.5 }
const roundOpening = () => must(circleOpening(round.diameterIn, round.centreIn, W))
const atAngle = (deg: number, flatIn = 0): SolidCut => ({
  flatIn,
  angleIn: W * Math.tan(rad(deg)),
  milledWidthIn: W,
})
const compound: SolidCut = { flatIn: 0.02, angleIn: 0.063, milledWidthIn: W }

const angles: readonly (readonly [deg: number, printedCc: number])[] = [
  [0.25, 2.547],
  [0.5, 5.095],
  [1, 10.19],
  [2, 20.387],
]
const ofRound: readonly Check[] = [
  ...angles.map(([deg, printedCc]) =>
    check(`${deg}° over 7 in from a circle of 3.600 in at 3.500`, derived, [printedCc, 'cc', 0.0006], () =>
      cutVolumeCc(roundOpening(), atAngle(deg)),
    ),
  ),
  ...angles.map(([deg]) => {
    const cc = cutFromRound(atAngle(deg), round)
    return check(`the same ${deg}°, from the solid`, solid, [cc, 'cc', 1e-6], () =>
      cutVolumeCc(roundOpening(), atAngle(deg)),
    )
  }),
  check(
    '20 thou flat and 63 thou at the edge, the same circle',
    solid,
    [cutFromRound(compound, round), 'cc', 1e-6],
    () => cutVolumeCc(roundOpening(), compound),
  ),
]

/** Any closed figure, and its own mirror image would not be told apart by a flat cut: so cut at an angle. */
const shapes: readonly (readonly [name: string, points: readonly (readonly [number, number])[]])[] = [
  [
    'a kidney of seven corners',
    [
      [1.2, 0],
      [3, -0.8],
      [5.4, -0.2],
      [5.9, 1.4],
      [4.1, 1.1],
      [2.6, 2.3],
      [1.4, 1.6],
    ],
  ],
  [
    'an L',
    [
      [1, 0],
      [5, 0],
      [5, 2],
      [3, 2],
      [3, 4],
      [1, 4],
    ],
  ],
  [
    'a wedge, far along the head',
    [
      [1.5, 14],
      [5.5, 14.5],
      [4.9, 17],
      [1.8, 16.2],
    ],
  ],
]
const outline = (points: readonly (readonly [number, number])[]): OutlinePoint[] =>
  points.map(([xIn, yIn]) => ({ xIn, yIn }))
const ofOutlines = shapes.map(([name, points]) =>
  check(`the same cut from ${name}`, solid, [cutFromOutline(compound, outline(points)), 'cc', 1e-6], () =>
    cutVolumeCc(must(openingOfOutline(outline(points), W)), compound),
  ),
)

const halfDisc = Array.from({ length: 721 }, (_, at): readonly [number, number] => {
  const turn = (Math.PI * at) / 720 - Math.PI / 2
  return [1 + 2 * Math.cos(turn), 2 * Math.sin(turn)]
})
const opening = (points: readonly (readonly [number, number])[]) => must(openingOfOutline(outline(points), W))
const trapezium: readonly (readonly [number, number])[] = [
  [1, 0],
  [4, 0],
  [4, 2],
  [1, 4],
]
const openings: readonly Check[] = [
  check(
    'half a disc of radius 2: area',
    'handbook: π·r²/2; 720 chords fall short by 2·10⁻⁵',
    [2 * Math.PI, 'in²', 1e-4],
    () => opening(halfDisc).areaIn2,
  ),
  check(
    'half a disc of radius 2 standing on x = 1: centroid',
    'handbook: 4r/3π from its flat side',
    [1 + 8 / (3 * Math.PI), 'in', 1e-4],
    () => opening(halfDisc).centreIn,
  ),
  check('trapezium, sides 4 and 2, 3 apart: area', 'handbook: h·(a + b)/2', [9, 'in²', 1e-12], () =>
    Number(opening(trapezium).areaIn2),
  ),
  check(
    'the same: centroid',
    'handbook: h/3·(a + 2b)/(a + b) from the longer side',
    [1 + 8 / 6, 'in', 1e-12],
    () => opening(trapezium).centreIn,
  ),
  check(
    'triangle from x = 1 to 4: centroid',
    'handbook: a third of the way from its side',
    [2, 'in', 1e-12],
    () =>
      opening([
        [1, 0],
        [4, 0],
        [1, 3],
      ]).centreIn,
  ),
  check(
    'circle of 3.600 in: area',
    'by hand: 1.8² = 3.24, times π = 10.1788',
    [10.1788, 'in²', 5e-5],
    () => roundOpening().areaIn2,
  ),
]

const circleTrack = 'Circle Track, Dec 2003, “Angle milling cylinder heads”: about 0.0175·W·degrees'
const chevy = 'Chevy High Performance, Oct 2008: about 0.017 in an inch of width and degree'
const depths: readonly Check[] = [
  check('1° over 7 in: depth at the edge', 'derived: 7·tan 1°', [0.12219, 'in', 5e-6], () => edgeDepthIn(1, W)),
  check('1° over 7 in: depth at the edge', circleTrack, [0.0175 * 7, 'in', 0.0005], () => edgeDepthIn(1, W)),
  check('0.5° over 9 in: depth at the edge', circleTrack, [0.0175 * 4.5, 'in', 0.0005], () => edgeDepthIn(0.5, 9)),
  check('1° over 1 in: depth at the edge', chevy, [0.017, 'in', 0.0005], () => edgeDepthIn(1, 1)),
  check('0.12219 in over 7 in: angle', 'derived: atan(0.0174557)', [1, '°', 1e-4], () => cutAngleDeg(0.12219, W)),
  check(
    '0.063 in over 7 in: angle',
    'by hand: 0.009 in an inch, 0.009·57.29578 less a third of its cube',
    [0.515648, '°', 1e-6],
    () => cutAngleDeg(0.063, W),
  ),
  check('compound cut at 4.445 of 7 in: depth', 'by hand: 0.020 + 0.063·0.635', [0.060005, 'in', 1e-12], () =>
    depthAt(compound, 4.445),
  ),
  check('compound cut at the deep edge: depth', 'by hand: 0.020 + 0.063', [0.083, 'in', 1e-12], () =>
    depthAt(compound, W),
  ),
  check(
    'compound cut, share 0.635: depth at the centroid',
    'common practice: 10 cc at 6 thou per cc are 60 thou',
    [0.06, 'in', 1e-5],
    () => depthAtCentroid(compound, 0.635) ?? NaN,
  ),
]

const wedge = { areaIn2: 10.1706, centreIn: 0.635 * W, milledWidthIn: W }
const onRound = { ...wedge, areaIn2: 1.8 ** 2 * Math.PI, centreIn: 3.5 }
const inverse: readonly Check[] = [
  check('3 cc from 10.1706 in²: flat depth', 'common practice: 18 thou', [0.018, 'in', 1e-6], () =>
    flatForVolume(3, 10.1706),
  ),
  check(
    '10 cc with 20 thou flat, share 0.635: depth at the edge',
    'common practice: 63 thou',
    [0.063, 'in', 1e-5],
    () => angleForVolume(10, 0.02, wedge),
  ),
  check('the same compound cut: volume', 'common practice: about 10 cc', [10, 'cc', 0.005], () =>
    cutVolumeCc(wedge, compound),
  ),
  check(
    'what 10 thou flat and 1° take of the round opening, asked back at 1°: flat part',
    solid,
    [0.01, 'in', 1e-8],
    () => flatAtAngle(cutFromRound(atAngle(1, 0.01), round), 1, onRound),
  ),
  check(
    '12.1904 cc at 1° from the round opening: flat part',
    'by hand: 10.1904 by the angle; 2/(16.387064·10.1788) for the rest',
    [0.01199, 'in', 1e-5],
    () => flatAtAngle(12.1904, 1, onRound),
  ),
  check('60 thou at the centroid with 20 flat: angle part', 'by hand: 0.040/0.635', [0.0629921, 'in', 1e-7], () =>
    angleBeside(0.06, 0.635, 0.02),
  ),
  check(
    '60 thou at the centroid with 0.05 at the edge: flat part',
    'by hand: 0.060 − 0.03175',
    [0.02825, 'in', 1e-12],
    () => flatBeside(0.06, 0.635, 0.05),
  ),
]

const lineWith = (largestAngleDeg: number | null, ...limits: readonly LineLimit[]) =>
  must(targetLine({ depthIn: 0.06, centroidShare: 0.635, milledWidthIn: W, largestAngleDeg, limits }))
const deepEdge = { name: 'thickness left at the deep edge', atShare: 1, mostIn: 0.085 }
const land = { name: 'land under the intake port', atShare: 0, mostIn: 0.03 }
const line: readonly Check[] = [
  check('line of cuts for 60 thou: all angle', 'by hand: 0.060/0.635', [0.0944882, 'in', 1e-7], () =>
    Number(lineWith(null).to.angleIn),
  ),
  check(
    'with 85 thou left at the edge: most angle part',
    'by hand: 0.025/0.365',
    [0.0684932, 'in', 1e-7],
    () => lineWith(1, deepEdge).to.angleIn,
  ),
  check('there: flat part', 'by hand: 0.085 − 0.0684932', [0.0165068, 'in', 1e-7], () =>
    Number(lineWith(1, deepEdge).to.flatIn),
  ),
  check(
    'with 30 thou of land left: least angle part',
    'by hand: 0.030/0.635',
    [0.0472441, 'in', 1e-7],
    () => lineWith(null, land).from.angleIn,
  ),
  check('with half a degree at most: angle part', 'derived: 7·tan 0.5°', [0.0610881, 'in', 1e-6], () =>
    Number(lineWith(0.5).to.angleIn),
  ),
]

const sixty = { flatIn: 0.06, angleIn: 0, milledWidthIn: W }
const square = outline([
  [2, 0],
  [5, 0],
  [5, 3],
  [2, 3],
])
const cone = circleOutline({ areaIn2: (Math.PI / 4) * 3.6 ** 2, centreIn: 3.5 })
const walls: readonly Check[] = [
  check(
    'wall draft of 10° at 60 thou, circle of 3.600: less taken',
    'derived: 0.6 %; by hand h·tan 10°/r = 0.587755 less a third of its square, 0.00115',
    [0.5866, '%', 0.0005],
    () => 100 * must(draftedVolume(sixty, cone, 10)).lessPart,
  ),
  ...[-15, 10, 30].map((draftDeg) =>
    check(
      `compound cut from a cone, draft ${draftDeg}°`,
      solid,
      [cutFromRound(compound, { ...round, draftDeg }), 'cc', 1e-4],
      () => must(draftedVolume(compound, cone, draftDeg)).cc,
    ),
  ),
  ...[-15, 10, 30].map((draftDeg) =>
    check(
      `compound cut from a pyramid, draft ${draftDeg}°`,
      solid,
      [cutFromSquare(compound, 3, 2, draftDeg), 'cc', 1e-5],
      () => must(draftedVolume(compound, square, draftDeg)).cc,
    ),
  ),
]

export const disc = (diameterIn: number, depthIn: number): number =>
  cutFromRound({ flatIn: depthIn, angleIn: 0, milledWidthIn: 20 }, { diameterIn, centreIn: 10 })
const sinks: readonly Check[] = [
  check('valve of 2.05 in sunk 0.010', 'by hand: π/4·2.05²·0.010 = 0.033006 in³', [0.54, 'cc', 0.005], () =>
    sinkVolumeCc(2.05, 0.01),
  ),
  check('valve of 1.60 in sunk 0.010', 'by hand: π/4·1.60²·0.010 = 0.020106 in³', [0.33, 'cc', 0.005], () =>
    sinkVolumeCc(1.6, 0.01),
  ),
  check(
    'two intake valves of 1.30 in and two exhaust of 1.10, all sunk 0.010: a chamber gains',
    solid,
    [2 * disc(1.3, 0.01) + 2 * disc(1.1, 0.01), 'cc', 1e-7],
    () => seatWorkCc({ intakeValveIn: 1.3, exhaustValveIn: 1.1, intakeValves: 2, exhaustValves: 2 }, 0.01),
  ),
  check(
    'three intake valves and one exhaust, sunk 0.010',
    solid,
    [3 * disc(1.2, 0.01) + disc(1.4, 0.01), 'cc', 1e-7],
    () => seatWorkCc({ intakeValveIn: 1.2, exhaustValveIn: 1.4, intakeValves: 3, exhaustValves: 1 }, 0.01),
  ),
  check(
    'valves a chamber not on record: one of each, 2.05 and 1.60 sunk 0.010',
    solid,
    [disc(2.05, 0.01) + disc(1.6, 0.01), 'cc', 1e-7],
    () => seatWorkCc({ intakeValveIn: 2.05, exhaustValveIn: 1.6 }, 0.01),
  ),
  check('valve of 2.05 in sunk 0.010', solid, [disc(2.05, 0.01), 'cc', 1e-7], () => sinkVolumeCc(2.05, 0.01)),
]

export const cut = {
  title: '3. Cut and volume',
  checks: [...ofRound, ...ofOutlines, ...openings, ...depths, ...inverse, ...line, ...walls, ...sinks],
}
