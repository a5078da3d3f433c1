import type { Actor } from '@/lib/core/access/roles'
import { addCastingSchema, type CastingForm } from '@/lib/schemas/casting'
import { addCasting } from '@/lib/use-cases/castings/add-casting'

type Bolt = CastingForm['bolts'][number]

/** Two rows of bolts: long ones along the intake edge, short ones along the exhaust edge. */
function boltRows(
  ys: readonly string[],
  [intake, exhaust]: readonly [Partial<Bolt>, Partial<Bolt>],
  common: Pick<Bolt, 'diameterIn' | 'boltIn'>,
): Bolt[] {
  const rest = { xIn: '', lengthIn: '', blind: false, threadLeftIn: '', ...common }
  const intakeRow = ys.map((yIn, at) => ({ ...rest, ...intake, label: String(at + 1), yIn }))
  const exhaustRow = ys.map((yIn, at) => ({ ...rest, ...exhaust, label: String(ys.length + at + 1), yIn }))
  return [...intakeRow, ...exhaustRow]
}

const variant = { variantId: '', supply: 'stock' as const, cutByMaker: false, leadDays: '', cost: '' }

/**
 * A wedge head for a small V engine. Opening area 10.1706 in² is 6.0 thou per cc [common practice: about 0.006 in per cc
 * on small wedge chambers]; the opening's centre at 0.635 of the milled width (3.810 of 6.000) is what makes 20 thou flat
 * and 63 thou at the deep edge take 10 cc [common practice]. All else is invented.
 */
const wedge: CastingForm = {
  name: 'Harrow wedge 64',
  material: 'aluminium',
  chamberCount: '4',
  chamberShape: 'open',
  deepEdge: 'exhaust',
  note: 'Exhaust valve sits a little higher than the intake. Water jacket is thin beside chamber 2: crack check after welding.',
  figures: {
    any: {
      milledWidthIn: '6.000',
      deckLengthIn: '20.00',
      thicknessNewIn: '4.250',
      thicknessLeastIn: '4.130',
      landNewIn: '0.460',
      landLeastIn: '0.340',
      landXIn: '0.25',
      largestAngleDeg: '1.0',
      intakeValveIn: '2.055',
      exhaustValveIn: '1.600',
      intakeValveAngleDeg: '22.0',
      exhaustValveAngleDeg: '22.0',
      intakeValveXIn: '3.05',
      exhaustValveXIn: '3.30',
      intakeValveZIn: '0.520',
      exhaustValveZIn: '0.470',
      intakeSealingIn: '2.045',
      intakeTopCutIn: '2.115',
      intakeTopCutOffsetIn: '0.020',
      intakeInsertIn: '2.155',
      intakeInsertOffsetIn: '0.030',
      intakeSeatDepthIn: '0.105',
      exhaustSealingIn: '1.590',
      exhaustTopCutIn: '1.660',
      exhaustTopCutOffsetIn: '0.020',
      exhaustInsertIn: '1.700',
      exhaustInsertOffsetIn: '0.030',
      exhaustSeatDepthIn: '0.140',
      intakeFaceDeg: '10.0',
      faceHeightIn: '2.60',
      portXIn: '0.20',
      portZIn: '2.10',
      dowelXIn: '0.75',
      dowelDepthIn: '0.375',
      boltCount: '10',
      boltHoleIn: '0.470',
      boltIn: '0.4375',
      boltHoleLengthIn: '3.750',
      spotFaceIn: '0.875',
      threadLeftIn: '0.250',
      rockerXIn: '3.40',
      rockerZIn: '4.40',
    },
    'as-cast': { nominalCc: '64.0', openingAreaIn2: '10.1706', openingCentreIn: '3.810' },
    machined: { nominalCc: '65.5', openingAreaIn2: '10.1706', openingCentreIn: '3.810' },
    opened: {},
  },
  bolts: boltRows(
    ['0.75', '5.375', '10.00', '14.625', '19.25'],
    [
      { xIn: '0.75', lengthIn: '3.750' },
      { xIn: '5.20', lengthIn: '1.900', blind: true, threadLeftIn: '0.250' },
    ],
    { diameterIn: '0.470', boltIn: '0.4375' },
  ),
  variants: [
    { ...variant, name: '64 cc, bare', nominalCc: '64.0', leadDays: '4', cost: '612.00' },
    {
      ...variant,
      name: '58 cc, cut by its maker',
      nominalCc: '58.0',
      supply: 'special',
      cutByMaker: true,
      leadDays: '24',
      cost: '748.50',
    },
  ],
}

/** An inline four with the cam in the head and valves leaning apart: the exhaust valve opens toward the shallow edge. */
const inlineFour: CastingForm = {
  name: 'Tarn inline four',
  material: 'aluminium',
  chamberCount: '4',
  chamberShape: 'open',
  deepEdge: 'exhaust',
  note: 'Cam runs in the head: check the bore for straightness before and after.',
  figures: {
    any: {
      milledWidthIn: '5.500',
      deckLengthIn: '16.20',
      thicknessNewIn: '5.180',
      thicknessLeastIn: '5.140',
      landNewIn: '0.510',
      landLeastIn: '0.450',
      landXIn: '0.20',
      largestAngleDeg: '0.30',
      intakeValveIn: '1.575',
      exhaustValveIn: '1.300',
      intakeValveAngleDeg: '16.0',
      exhaustValveAngleDeg: '-17.0',
      intakeValveXIn: '2.02',
      exhaustValveXIn: '3.58',
      intakeValveZIn: '0.380',
      exhaustValveZIn: '0.345',
      intakeFaceDeg: '0',
      faceHeightIn: '2.20',
      portXIn: '0.15',
      portZIn: '1.85',
      dowelXIn: '2.75',
      dowelDepthIn: '0.310',
      boltCount: '10',
      boltHoleIn: '0.445',
      boltIn: '0.3937',
      boltHoleLengthIn: '3.150',
      spotFaceIn: '0.790',
      rockerXIn: '2.75',
      rockerZIn: '4.05',
      camXIn: '2.75',
      camZIn: '4.60',
    },
    'as-cast': { nominalCc: '48.5', openingAreaIn2: '6.35', openingCentreIn: '2.80' },
    machined: {},
    opened: { nominalCc: '50.2', openingAreaIn2: '6.52', openingCentreIn: '2.81' },
  },
  bolts: boltRows(
    ['0.60', '4.35', '8.10', '11.85', '15.60'],
    [
      { xIn: '0.80', lengthIn: '3.150' },
      { xIn: '4.70', lengthIn: '3.150' },
    ],
    { diameterIn: '0.445', boltIn: '0.3937' },
  ),
  variants: [{ ...variant, name: '48 cc, complete', nominalCc: '48.5', leadDays: '9', cost: '890.00' }],
}

/** An invented shape, scaled so that its area and centre are the typed ones of the closed chamber to within 1 %. */
const closedOutline = `
5.014 2.195
5.037 2.570
5.012 2.977
4.882 3.412
4.580 3.794
4.119 4.001
3.605 4.040
3.139 4.001
2.710 3.794
2.415 3.412
2.266 2.977
2.211 2.570
2.197 2.195
2.234 1.819
2.302 1.412
2.448 0.978
2.734 0.595
3.151 0.389
3.605 0.350
4.060 0.389
4.477 0.595
4.763 0.978
4.909 1.412
4.977 1.819
`.trim()

/** Closed chamber: a smaller opening, so a deeper cut for the same volume. */
const closed: CastingForm = {
  name: 'Bellmoor closed 58',
  material: 'cast iron',
  chamberCount: '4',
  chamberShape: 'closed',
  deepEdge: 'exhaust',
  note: 'Quench pad is flat with the deck: an angle cut leaves it wedge-shaped.',
  figures: {
    any: {
      milledWidthIn: '6.250',
      deckLengthIn: '19.40',
      thicknessNewIn: '3.980',
      thicknessLeastIn: '3.890',
      landNewIn: '0.430',
      landLeastIn: '0.345',
      landXIn: '0.25',
      largestAngleDeg: '0.75',
      intakeValveIn: '1.940',
      exhaustValveIn: '1.500',
      intakeValveAngleDeg: '20.0',
      exhaustValveAngleDeg: '20.0',
      intakeValveXIn: '3.10',
      exhaustValveXIn: '3.22',
      intakeValveZIn: '0.450',
      exhaustValveZIn: '0.400',
      intakeSealingIn: '1.930',
      intakeTopCutIn: '2.000',
      intakeTopCutOffsetIn: '0.020',
      intakeInsertIn: '2.040',
      intakeInsertOffsetIn: '0.030',
      intakeSeatDepthIn: '0.090',
      exhaustSealingIn: '1.490',
      exhaustTopCutIn: '1.560',
      exhaustTopCutOffsetIn: '0.020',
      exhaustInsertIn: '1.600',
      exhaustInsertOffsetIn: '0.030',
      exhaustSeatDepthIn: '0.115',
      intakeFaceDeg: '5.0',
      faceHeightIn: '2.45',
      portXIn: '0.20',
      portZIn: '1.95',
      dowelXIn: '0.80',
      dowelDepthIn: '0.340',
      boltCount: '10',
      boltHoleIn: '0.470',
      boltIn: '0.4375',
      boltHoleLengthIn: '3.400',
      spotFaceIn: '0.850',
      threadLeftIn: '0.220',
      rockerXIn: '3.55',
      rockerZIn: '4.10',
    },
    'as-cast': { nominalCc: '58.0', openingAreaIn2: '8.74', openingCentreIn: '3.62', wallDraftDeg: '4.0' },
    machined: {},
    opened: {},
  },
  outlines: { 'as-cast': closedOutline },
  bolts: boltRows(
    ['0.70', '5.20', '9.70', '14.20', '18.70'],
    [
      { xIn: '0.80', lengthIn: '3.400' },
      { xIn: '5.45', lengthIn: '1.750', blind: true, threadLeftIn: '0.220' },
    ],
    { diameterIn: '0.470', boltIn: '0.4375' },
  ),
  variants: [],
}

/** What a shop has of an old head: nobody knows what it was when new, and the rate is a first guess from the perimeter. */
const old: CastingForm = {
  name: 'Sallow iron 76',
  material: 'cast iron',
  chamberCount: '4',
  chamberShape: 'open',
  deepEdge: 'exhaust',
  note: 'No drawing, no untouched one seen. Most have been skimmed before.',
  figures: {
    any: {
      milledWidthIn: '6.100',
      intakeValveIn: '1.720',
      exhaustValveIn: '1.500',
      intakeValveAngleDeg: '23.0',
      exhaustValveAngleDeg: '23.0',
      boltCount: '10',
      boltHoleIn: '0.480',
      boltIn: '0.4375',
    },
    'as-cast': { nominalCc: '76', perimeterIn: '11.9', openingCentreIn: '3.70' },
    machined: {},
    opened: {},
  },
  bolts: [],
  variants: [],
}

/** Two intake and two exhaust valves a chamber under a roof; seat work counts all four. */
const fourValve: CastingForm = {
  name: 'Linnet roof 44',
  material: 'aluminium',
  chamberCount: '4',
  chamberShape: 'open',
  deepEdge: 'exhaust',
  note: 'Four valves a chamber, two cams in the head: chain and cam bores follow the deck.',
  figures: {
    any: {
      milledWidthIn: '6.400',
      deckLengthIn: '17.600',
      thicknessNewIn: '5.1200',
      thicknessLeastIn: '5.0900',
      intakeValves: '2',
      exhaustValves: '2',
      intakeValveIn: '1.300',
      exhaustValveIn: '1.100',
      intakeValveAngleDeg: '13.0',
      exhaustValveAngleDeg: '-14.0',
      intakeValveXIn: '2.350',
      exhaustValveXIn: '4.020',
      intakeValveZIn: '.310',
      exhaustValveZIn: '.330',
      boltCount: '10',
    },
    'as-cast': { nominalCc: '44.0', openingAreaIn2: '8.20', openingCentreIn: '3.20' },
    machined: {},
    opened: {},
  },
  bolts: [],
  variants: [],
}

/** Valves in a flat face, the chamber in the piston; the limits are those of an invented engine maker. */
const flatDeck: CastingForm = {
  name: 'Marrow flat deck 4',
  material: 'cast iron',
  chamberCount: '4',
  chamberShape: 'flat-deck',
  deepEdge: 'exhaust',
  note: 'Injectors come out for the mill and go back with new washers. Limits as the engine maker gives them.',
  figures: {
    any: {
      milledWidthIn: '7.200',
      deckLengthIn: '22.400',
      thicknessNewIn: '4.1340',
      thicknessLeastIn: '4.1140',
      intakeValves: '2',
      exhaustValves: '2',
      intakeValveIn: '1.240',
      exhaustValveIn: '1.160',
      intakeValveXIn: '2.550',
      exhaustValveXIn: '4.650',
      injectorXIn: '3.600',
      intakeValveAngleDeg: '0',
      exhaustValveAngleDeg: '0',
      intakeRecessionLeastIn: '.024',
      intakeRecessionMostIn: '.055',
      exhaustRecessionLeastIn: '.028',
      exhaustRecessionMostIn: '.060',
      injectorProtrusionLeastIn: '.050',
      injectorProtrusionMostIn: '.085',
      boltCount: '18',
    },
    'as-cast': {},
    machined: {},
    opened: {},
  },
  bolts: [],
  variants: [],
}

const castings = { wedge, inlineFour, closed, old, fourValve, flatDeck }
export type DemoCastings = Readonly<Record<keyof typeof castings, string>>

/** Ids by kind. Every one of them is invented. */
export async function seedCastings(actor: Actor, now: Date): Promise<DemoCastings> {
  const add = async (key: keyof DemoCastings): Promise<string> =>
    (await addCasting(actor, addCastingSchema.parse(castings[key]), { now })).castingId
  return {
    wedge: await add('wedge'),
    inlineFour: await add('inlineFour'),
    closed: await add('closed'),
    old: await add('old'),
    fourValve: await add('fourValve'),
    flatDeck: await add('flatDeck'),
  }
}
