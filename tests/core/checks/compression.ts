import { unit } from 'mathjs'
import { chamberForRatio, compressionRatio, cylinderVolumes, ratioPerCc } from '@/lib/core/compression/ratio'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { must } from '@/lib/core/errors'
import { check, type Check } from './check'

type Engine = Partial<EngineFacts>
const cuin = (in3: number): number => unit(in3, 'cuin').toNumber('cc')
const mm = (length: number): number => unit(length, 'mm').toNumber('in')

const carbureted = {
  boreIn: 4,
  strokeIn: 3.48,
  gasketBoreIn: 4,
  gasketThicknessIn: 0.02,
  deckClearanceIn: 0.05,
  pistonDishCc: 5,
} satisfies Engine
const noGasket = { gasketThicknessIn: 0, pistonDishCc: 0 }

/** Printed ratios are held to 0.02: their authors round volumes on the way. */
const printedRatio = (engine: string, source: string, printed: number, ours: Check['ours']): Check =>
  check(`ratio of ${engine}`, source, [printed, '', 0.02], ours)
const ratioOf = (engine: Engine, chamberCc: number) => () => compressionRatio(must(cylinderVolumes(engine)), chamberCc)

const printed: readonly Check[] = [
  printedRatio(
    '4.000 × 3.48 in, 70 cc',
    'Circle Track, May 2004; its stroke is not printed, 3.48 gives its swept volume',
    9.01,
    ratioOf(carbureted, 70),
  ),
  check(
    'swept volume of 4.000 × 3.48 in',
    'Circle Track, May 2004',
    [43.731, 'in³', 0.001],
    () => must(cylinderVolumes(carbureted)).sweptCc / cuin(1),
  ),
  printedRatio(
    '4.000 × 3.48 in, 0.033 deck, 64 cc',
    'Circle Track, Feb 2011',
    9.97,
    ratioOf({ ...carbureted, deckClearanceIn: 0.033 }, 64),
  ),
  printedRatio(
    'a V8 of 355 in³, 64 cc, dome of 12',
    'Stroker Kits, Auto Math 101',
    13.09,
    ratioOf(
      {
        boreIn: 4.03,
        strokeIn: 355 / 8 / ((Math.PI / 4) * 4.03 ** 2),
        gasketBoreIn: 4.03,
        gasketThicknessIn: 0.03,
        deckClearanceIn: 0.009,
        pistonDomeCc: 12,
      },
      64,
    ),
  ),
  printedRatio(
    '92 × 82 mm, 48 cc',
    'Great Plains Aircraft, compression-ratio notes',
    11.6,
    ratioOf({ boreIn: mm(92), strokeIn: mm(82), deckClearanceIn: 0.02, ...noGasket }, 48),
  ),
  printedRatio(
    '87 × 69 mm, 50 cc',
    'Quality German Auto Parts, Formulas & Charts',
    7.95,
    ratioOf({ boreIn: mm(87), strokeIn: mm(69), deckClearanceIn: 0.06, ...noGasket }, 50),
  ),
  printedRatio(
    '90.5 × 82 mm, 46 cc',
    'by hand: 1 + 527.48/55.649; a blog prints 9.48 and left out the one',
    10.48,
    ratioOf({ boreIn: mm(90.5), strokeIn: mm(82), deckClearanceIn: mm(1.5), ...noGasket }, 46),
  ),
  printedRatio('216.52 cm³ swept over 25.0', 'Energies 2023, 16, 6655', 9.66, () =>
    compressionRatio({ sweptCc: 216.52, besideChamberCc: 0 }, 25),
  ),
]

const antique = [
  [17.9, 3.77],
  [15.6, 4.24],
  [16.6, 4.02],
  [13.7, 4.76],
  [12.8, 5.07],
  [12.2, 5.31],
] as const
const ofAntique = antique.map(([chamberIn3, ratio]) =>
  printedRatio(
    `44.2 in³, piston 2.86 in³ above the deck, chamber ${chamberIn3} in³`,
    'Antique Auto Ranch, July newsletter',
    ratio,
    () => compressionRatio({ sweptCc: cuin(44.2), besideChamberCc: cuin(0.92 - 2.86) }, cuin(chamberIn3)),
  ),
)

const table = [12.53, 11.77, 11.11, 10.52, 10.0, 9.52, 9.1, 8.72, 8.37, 8.06, 7.77, 7.5, 7.25, 7.02]
const large = { boreIn: 4.12, strokeIn: 3.75, deckClearanceIn: 0, ...noGasket }
const ofTable = table.map((ratio, at) =>
  printedRatio(
    `4.120 × 3.75 in, 21 cc beside a chamber of ${50 + 5 * at}`,
    'Pontiac Action, chamber-volume table; stroke from memory',
    ratio,
    () => compressionRatio({ ...must(cylinderVolumes(large)), besideChamberCc: 21 }, 50 + 5 * at),
  ),
)

const even = { sweptCc: 720, besideChamberCc: 20 }
const liner = 'mathjs 15: cylinder of 92 × 82 mm in cubic centimetres'
const worked: readonly Check[] = [
  check(
    'swept volume of 92 × 82 mm',
    liner,
    [unit((Math.PI / 4) * 9.2 ** 2 * 8.2, 'cm^3').toNumber('cc'), 'cc', 1e-9],
    () => must(cylinderVolumes({ boreIn: mm(92), strokeIn: mm(82), deckClearanceIn: 0, ...noGasket })).sweptCc,
  ),
  check(
    'beside the chamber: gasket 4.000 × 0.020, deck 0.050, dish 5',
    'by hand: 12.56637·(0.020 + 0.050)·16.387064 + 5',
    [19.41481, 'cc', 0.0001],
    () => must(cylinderVolumes(carbureted)).besideChamberCc,
  ),
  check(
    'the same with a piston 0.010 above the deck',
    'by hand: 12.56637·(0.020 − 0.010)·16.387064 + 5',
    [7.05926, 'cc', 0.0001],
    () => must(cylinderVolumes({ ...carbureted, deckClearanceIn: -0.01 })).besideChamberCc,
  ),
  check('chamber for 10 to 1, 720 cc swept, 20 beside it', 'by hand: 720/9 − 20', [60, 'cc', 1e-12], () =>
    chamberForRatio(even, 10),
  ),
  check(
    'chamber for 10 to 1, 4.120 × 3.75 in, 21 cc beside it',
    'Pontiac Action, chamber-volume table; stroke from memory',
    [70, 'cc', 0.2],
    () => chamberForRatio({ ...must(cylinderVolumes(large)), besideChamberCc: 21 }, 10),
  ),
  check('change of the ratio with a cc, 720 swept over 80', 'by hand: −720/6400', [-0.1125, '', 1e-12], () =>
    ratioPerCc(even, 60),
  ),
  check(
    'the same, 4.120 × 3.75 in at 70 cc',
    'Pontiac Action, chamber-volume table: (9.52 − 10.52)/10; stroke from memory',
    [-0.1, '', 0.002],
    () => ratioPerCc({ ...must(cylinderVolumes(large)), besideChamberCc: 21 }, 70),
  ),
]

export const compression = {
  title: '6. Compression ratio',
  checks: [...printed, ...ofAntique, ...ofTable, ...worked],
}
