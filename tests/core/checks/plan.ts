import { makePlan, type PlanInput } from '@/lib/core/cut/plan'
import { must } from '@/lib/core/errors'
import { check, type Check } from './check'

/** Four chambers of 64 cc on the mean; six thou per cc; centre of the openings at 0.635 of 7 in. */
const base: PlanInput = {
  kind: 'flat',
  heads: [{ tag: 'T-0001', chambersCc: [64, 64.2, 63.8, 64], thicknessIn: 4.5 }],
  targetCc: 61,
  toleranceCc: 0.5,
  seatWorkGivesCc: 0,
  thouPerCc: 6,
  centroidShare: 0.635,
  milledWidthIn: 7,
  split: { by: 'margin' },
  marginCc: 1,
  stopAtIn: null,
  limits: {
    angleCautionDeg: 0.5,
    angleLimitDeg: 2,
    thicknessNewIn: 4.55,
    thicknessLeastIn: null,
    classFlatOnly: false,
    classMinCc: null,
    classMaxCutIn: null,
  },
}
const plan = (more: Partial<PlanInput> = {}) => must(makePlan({ ...base, ...more }))
const tenCc = { kind: 'angle-flat', targetCc: 54 } as const
const head = (tag: string, ...chambersCc: readonly number[]) => ({ tag, chambersCc, thicknessIn: null })
const pair = { heads: [head('T-0001', 64, 64), head('T-0002', 65, 65)] }
const uneven = { heads: [head('T-0001', 64, 64.2, 63.8, 65)] }
/** What sinking valves of 2.05 and 1.60 in by 0.010 adds. */
const seatWork = { seatWorkGivesCc: 0.87 }

const checks: readonly Check[] = [
  check('3 cc at 6 thou per cc: flat part', 'common practice: 18 thou', [0.018, 'in', 1e-12], () => plan().flatIn),
  check('taken from each chamber', 'by hand: 64 − 61', [3, 'cc', 1e-12], () => plan().removesCc ?? NaN),
  check('left after the cut, mean', 'by hand', [61, 'cc', 1e-12], () => plan().afterCutCc ?? NaN),
  check('10 cc with 20 thou flat: angle part', 'common practice: 63 thou', [0.063, 'in', 1e-5], () =>
    Number(plan({ ...tenCc, split: { by: 'flat', flatIn: 0.02 } }).angleIn),
  ),
  check(
    'the same: angle',
    'by hand: atan(0.0629921/7) = 0.00899863 rad',
    [0.515584, '°', 1e-5],
    () => plan({ ...tenCc, split: { by: 'flat', flatIn: 0.02 } }).angleDeg ?? NaN,
  ),
  check('10 cc with 0.040/0.635 at the edge: flat part', 'by hand: 0.060 − 0.040', [0.02, 'in', 1e-12], () =>
    Number(plan({ ...tenCc, split: { by: 'angle', angleIn: 0.04 / 0.635 } }).flatIn),
  ),
  check(
    '10 cc at half a degree: flat part',
    'by hand: 0.060 − 0.635·7·0.00872687',
    [0.0212091, 'in', 1e-7],
    () => plan({ ...tenCc, split: { by: 'degrees', angleDeg: 0.5 } }).flatIn,
  ),
  check('10 cc all by the angle: deepest', 'by hand: 0.060/0.635', [0.0944882, 'in', 1e-7], () =>
    Number(plan({ ...tenCc, kind: 'angle' }).deepestIn),
  ),
  check(
    '10 cc, a vendor’s margin of 1 cc: angle part',
    'by hand: (0.060 − 0.006)/0.635',
    [0.0850394, 'in', 1e-7],
    () => plan(tenCc).angleIn,
  ),
  check(
    'seat work of 0.87 cc to come: flat part',
    'by hand: (64 − 61 + 0.87)·6',
    [0.02322, 'in', 1e-12],
    () => plan(seatWork).flatIn,
  ),
  check('the same: aim of the cut', 'by hand: 61 − 0.87', [60.13, 'cc', 1e-12], () => plan(seatWork).aimCc ?? NaN),
  check('the same: finished', 'by hand: 60.13 + 0.87', [61, 'cc', 1e-12], () => plan(seatWork).finishedCc ?? NaN),
  check(
    'pair of 64 and 65 cc to 61: one depth for both',
    'by hand: (64.5 − 61)·6',
    [0.021, 'in', 1e-12],
    () => plan({ ...pair, toleranceCc: 2 }).flatIn,
  ),
  check('equalising 65 cc at the largest to 61', 'by hand: (65 − 61)·6', [0.024, 'in', 1e-12], () =>
    Number(plan({ ...uneven, equalise: true }).flatIn),
  ),
  check(
    'the same: chamber 3 of 63.8 cc is then short by',
    'by hand: 63.8 − 4 − 61',
    [-1.2, 'cc', 1e-12],
    () => plan({ ...uneven, equalise: true }).outOfTolerance.find(({ chamber }) => chamber === 3)?.overCc ?? NaN,
  ),
  check(
    '18 thou off a head of 4.500 in: thickness left',
    'by hand: 4.500 − 0.018',
    [4.482, 'in', 1e-12],
    () => plan().heads[0]?.thicknessLeftIn ?? NaN,
  ),
  check(
    'the same, 4.550 when new: gone in all',
    'by hand: 0.050 + 0.018',
    [0.068, 'in', 1e-12],
    () => plan().totalRemovedIn ?? NaN,
  ),
  check(
    'clean-up of 5 thou at 6 thou per cc: taken',
    'by hand: 5/6',
    [0.833333, 'cc', 1e-6],
    () => plan({ kind: 'clean-up', targetCc: null, stopAtIn: 0.005 }).removesCc ?? NaN,
  ),
]

export const plans = { title: '3. The plan of a cut', checks }
