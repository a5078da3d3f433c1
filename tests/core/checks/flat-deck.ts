import { add, fraction, number, subtract } from 'mathjs'
import { compressionRatio } from '@/lib/core/compression/ratio'
import { must, ok, refuse, type Result } from '@/lib/core/errors'
import { flatDeckAfter, type FlatDeckAfter } from '@/lib/core/flat-deck/after-cut'
import { deepestFlatCut } from '@/lib/core/flat-deck/deepest-cut'
import { judgeByLimits } from '@/lib/core/flat-deck/maker-limits'
import { flatDeckVolumeAfterCc, pocketsCc } from '@/lib/core/flat-deck/pockets'
import { protrusionAfter } from '@/lib/core/flat-deck/protrusion'
import { recessionAfter, sinkForRecession } from '@/lib/core/flat-deck/recession'
import { depthToThickness } from '@/lib/core/flat-deck/thickness'
import { check, type Check } from './check'
import { disc } from './cut'

const fractions = 'mathjs fractions, in thou'
const byHand = 'algebra by hand, steps beside the check'
const solid = 'manifold-3d solid'
const upright = { valveAngleDeg: 0 }
const thou = (text: string): number => number(fraction(text)) / 1000

const depths: readonly Check[] = [
  check(
    'valve 40 thou deep, 12 cut',
    fractions,
    [number(subtract(fraction('40/1000'), fraction('12/1000'))), 'in', 1e-15],
    () => recessionAfter(0.04, 0.012, 0, upright),
  ),
  check(
    'valve 5 thou deep, 12 cut: proud',
    fractions,
    [number(subtract(fraction('5/1000'), fraction('12/1000'))), 'in', 1e-15],
    () => recessionAfter(0.005, 0.012, 0, upright),
  ),
  // cos 60° is one half: 40 − 12 + 10/2 = 33.
  check('the same sunk 10 thou along an axis at 60°', byHand, [thou('33'), 'in', 1e-15], () =>
    recessionAfter(0.04, 0.012, 0.01, { valveAngleDeg: 60 }),
  ),
  // tan 45° is 1 both ways: the axis is (1, 1, −1)/√3, so 40 − 12 + 10/√3 = 28 + 5.7735.
  check('sunk 10 thou along an axis canted 45° both ways', byHand, [0.028 + 0.01 / Math.sqrt(3), 'in', 1e-15], () =>
    recessionAfter(0.04, 0.012, 0.01, { valveAngleDeg: 45, cantDeg: 45 }),
  ),
  check('sink from 28 to 30 thou, upright', fractions, [thou('2'), 'in', 1e-15], () =>
    sinkForRecession(0.028, 0.03, upright),
  ),
  // q·cos 60° = 2 thou, so q = 4.
  check('the same at 60°', byHand, [thou('4'), 'in', 1e-15], () =>
    sinkForRecession(0.028, 0.03, { valveAngleDeg: -60 }),
  ),
  check('no sink where it lies deep enough', byHand, [0, 'in', 0], () => sinkForRecession(0.031, 0.03, upright)),
  check(
    'injector 60 thou out, 12 cut',
    fractions,
    [number(add(fraction('60/1000'), fraction('12/1000'))), 'in', 1e-15],
    () => protrusionAfter(0.06, 0.012),
  ),
  check('injector 4 thou behind the deck, 12 cut', fractions, [thou('8'), 'in', 1e-15], () =>
    protrusionAfter(-0.004, 0.012),
  ),
  check(
    '4.1320 in at the thinnest corner, 4.1200 wanted',
    fractions,
    [number(subtract(fraction('41320/10000'), fraction('41200/10000'))), 'in', 1e-15],
    () => depthToThickness(4.132, 4.12),
  ),
  check('21 thou where 24 to 40 are allowed', fractions, [thou('3'), 'in', 1e-15], () => {
    const { state, byIn } = judgeByLimits(0.021, { leastIn: 0.024, mostIn: 0.04 })
    return state === 'under' ? byIn : NaN
  }),
  check('43 thou where 24 to 40 are allowed', fractions, [thou('3'), 'in', 1e-15], () => {
    const { state, byIn } = judgeByLimits(0.043, { leastIn: 0.024, mostIn: 0.04 })
    return state === 'over' ? byIn : NaN
  }),
]

/** Two intake and two exhaust valves, upright; limits of an invented engine. */
const record = {
  milledWidthIn: 7,
  intakeValveIn: 1.5,
  exhaustValveIn: 1.4,
  intakeValveAngleDeg: 0,
  exhaustValveAngleDeg: 0,
  intakeValveXIn: 2,
  exhaustValveXIn: 5,
  injectorXIn: 3.5,
  intakeRecessionLeastIn: 0.03,
  exhaustRecessionLeastIn: 0.035,
  injectorProtrusionMostIn: 0.075,
  thicknessLeastIn: 4.1,
}
const read = {
  recessionIn: { '1-intake': 0.04, '1-intake-2': 0.042, '1-exhaust': 0.05, '1-exhaust-2': 0.051 },
  protrusionIn: { '1': 0.06 },
}
const flat12 = { flatIn: 0.012, angleIn: 0, milledWidthIn: 7 }
const leaning = { flatIn: 0.01, angleIn: 0.007, milledWidthIn: 7 }

const valveOf = (found: Result<FlatDeckAfter>, valve: string): Result<number> => {
  if (!found.ok) return found
  const one = found.value.valves.find((candidate) => candidate.valve === valve)
  return one ? ok(one.afterIn) : refuse('not-found', valve)
}
const ccOf = (found: Result<FlatDeckAfter>, which: 'beforeCc' | 'afterCc'): Result<number> => {
  const cc = found.ok ? found.value[which] : null
  return cc === null ? refuse('missing', which) : ok(cc)
}

const heads: readonly Check[] = [
  // Flat part 10, lean 7 over 7 in: one thou an inch. At 2 in: 12, at 5 in: 15, at 3.5 in: 13.5.
  check('leaning cut, second intake valve at 2 in', byHand, [thou('30'), 'in', 1e-15], () =>
    valveOf(flatDeckAfter(read, record, leaning, 0), '1-intake-2'),
  ),
  check('leaning cut, exhaust valve at 5 in', byHand, [thou('35'), 'in', 1e-15], () =>
    valveOf(flatDeckAfter(read, record, leaning, 0), '1-exhaust'),
  ),
  check('leaning cut, injector at 3.5 in', byHand, [thou('147/2'), 'in', 1e-15], () => {
    const found = must(flatDeckAfter(read, record, leaning, 0))
    return found.injectors[0]?.afterIn ?? NaN
  }),
  check('flat cut and a sink of 4 thou at every valve', byHand, [thou('43'), 'in', 1e-15], () =>
    valveOf(flatDeckAfter(read, record, flat12, 0.004), '1-exhaust-2'),
  ),
  check(
    'pockets before, two of 1.5 in and two of 1.4 in',
    solid,
    [disc(1.5, 0.04) + disc(1.5, 0.042) + disc(1.4, 0.05) + disc(1.4, 0.051), 'cc', 1e-7],
    () => ccOf(flatDeckAfter(read, record, flat12, 0), 'beforeCc'),
  ),
  check(
    'pockets after 12 thou',
    solid,
    [disc(1.5, 0.028) + disc(1.5, 0.03) + disc(1.4, 0.038) + disc(1.4, 0.039), 'cc', 1e-7],
    () => ccOf(flatDeckAfter(read, record, flat12, 0), 'afterCc'),
  ),
  // The limits leave 40 − 30 = 10, 42 − 30 = 12, 50 − 35 = 15, 51 − 35 = 16, 75 − 60 = 15 and 4132 − 4100 = 32 thou.
  check('deepest cut within the limits', byHand, [thou('10'), 'in', 1e-15], () => {
    const found = must(deepestFlatCut(read, record, 4.132))
    return found.point === '1-intake' ? found.depthIn : NaN
  }),
  check('the same bound by the injector', byHand, [thou('9'), 'in', 1e-15], () => {
    const found = must(deepestFlatCut({ ...read, protrusionIn: { '1': 0.06, '2': 0.066 } }, record, 4.132))
    return found.boundBy === 'protrusion' && found.point === '2' ? found.depthIn : NaN
  }),
  check('the same bound by the thickness', byHand, [thou('7'), 'in', 1e-15], () => {
    const found = must(deepestFlatCut(read, record, 4.107))
    return found.boundBy === 'thickness' ? found.depthIn : NaN
  }),
]

const volumes: readonly Check[] = [
  check('valves of 2.0 and 1.6 in, 40 and 50 thou deep', solid, [disc(2, 0.04) + disc(1.6, 0.05), 'cc', 1e-7], () =>
    pocketsCc([
      { diameterIn: 2, recessionIn: 0.04 },
      { diameterIn: 1.6, recessionIn: 0.05 },
    ]),
  ),
  check('the same 10 thou proud', solid, [-disc(2, 0.01) - disc(1.6, 0.01), 'cc', 1e-7], () =>
    pocketsCc([
      { diameterIn: 2, recessionIn: -0.01 },
      { diameterIn: 1.6, recessionIn: -0.01 },
    ]),
  ),
  check('5.0 cc read, one valve of 2.0 in from 40 to 28 thou', solid, [5 - disc(2, 0.012), 'cc', 1e-7], () =>
    flatDeckVolumeAfterCc(5, [{ diameterIn: 2, recessionIn: 0.04 }], [{ diameterIn: 2, recessionIn: 0.028 }]),
  ),
  check('the same, nothing read', solid, [disc(2, 0.028), 'cc', 1e-7], () =>
    flatDeckVolumeAfterCc(null, [{ diameterIn: 2, recessionIn: 0.04 }], [{ diameterIn: 2, recessionIn: 0.028 }]),
  ),
  // Dish and gasket together 48: (900 + 48 + 2)/(48 + 2) = 950/50.
  check('ratio with 2 cc of pockets, 900 swept, 48 beside them', byHand, [number(fraction('950/50')), '', 1e-12], () =>
    compressionRatio({ sweptCc: 900, besideChamberCc: 48 }, 2, 'pocketVolume'),
  ),
  // Proud valves take 3 cc: (900 + 45)/45.
  check('the same with valves proud by 3 cc', byHand, [number(fraction('945/45')), '', 1e-12], () =>
    compressionRatio({ sweptCc: 900, besideChamberCc: 48 }, -3, 'pocketVolume'),
  ),
  // (900 + 48)/48.
  check('ratio with no pockets at all', byHand, [number(fraction('948/48')), '', 1e-12], () =>
    compressionRatio({ sweptCc: 900, besideChamberCc: 48 }, 0, 'pocketVolume'),
  ),
]

export const flatDecks = { title: '16. Flat decks', checks: [...depths, ...heads, ...volumes] }
