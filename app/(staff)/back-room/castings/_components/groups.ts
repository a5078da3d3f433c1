import { appliesTo, chamberShapeOf } from '@/lib/core/casting/chamber-shape'
import { castingFigures, type CastingFigureKey, type ChamberForm } from '@/lib/core/casting/figures'
import { perFormKeys, type SharedKey } from '@/lib/schemas/casting'

export const chamberKeys = perFormKeys

/** The figure's name at the head of a field: "Nominal chamber". */
export function figureLabel(key: CastingFigureKey): string {
  const { label } = castingFigures[key]
  return label.charAt(0).toUpperCase() + label.slice(1)
}

export const formLabels: Record<ChamberForm, string> = {
  'as-cast': 'as cast',
  machined: 'machined',
  opened: 'opened',
}

type Group = {
  readonly id: string
  readonly title: string
  readonly about: string
  readonly keys: readonly SharedKey[]
}

/** Every figure that holds for all chamber forms, in the order in which one measures. */
const groups: readonly Group[] = [
  {
    id: 'deck',
    title: 'Deck',
    about:
      'From the shallow edge of an angle cut to its deep edge is the milled width. Leave the place of the corners empty to use the shop’s setting. Least thickness: follow the maker of the head; there is no figure that fits all.',
    keys: [
      'milledWidthIn',
      'deckLengthIn',
      'cornerInsetEdgeIn',
      'cornerInsetEndIn',
      'thicknessNewIn',
      'thicknessLeastIn',
      'landNewIn',
      'landLeastIn',
      'landXIn',
      'largestAngleDeg',
    ],
  },
  {
    id: 'valves',
    title: 'Valves',
    about:
      'Valves a chamber: 1 to 3 of each, one when left empty. Angles from square to the deck: positive when the valve opens toward the deep edge. Places with the valve shut, of the rim of its face.',
    keys: [
      'intakeValves',
      'exhaustValves',
      'intakeValveIn',
      'exhaustValveIn',
      'intakeValveAngleDeg',
      'exhaustValveAngleDeg',
      'intakeValveXIn',
      'exhaustValveXIn',
      'intakeValveZIn',
      'exhaustValveZIn',
      'intakeValveCantDeg',
      'exhaustValveCantDeg',
    ],
  },
  {
    id: 'flat-deck',
    title: 'Flat deck: the engine maker’s limits',
    about:
      'From the engine maker’s data; the shop has no figure of its own. Valve recession: deck to valve head, minus where the valve stands proud. Injector protrusion: deck to its tip. Leave the injector’s limits empty where there is none. The minimum thickness stands with the deck.',
    keys: [
      'intakeRecessionLeastIn',
      'intakeRecessionMostIn',
      'exhaustRecessionLeastIn',
      'exhaustRecessionMostIn',
      'injectorProtrusionLeastIn',
      'injectorProtrusionMostIn',
      'injectorXIn',
    ],
  },
  {
    id: 'seats',
    title: 'Seats',
    about:
      'Three circles on the valve’s axis: the outer edge of the sealing seat, where the top cut meets the chamber, the insert’s outer edge. Offsets along the axis from the sealing circle, positive the way the valve opens.',
    keys: [
      'intakeSealingIn',
      'intakeTopCutIn',
      'intakeTopCutOffsetIn',
      'intakeInsertIn',
      'intakeInsertOffsetIn',
      'intakeSeatDepthIn',
      'exhaustSealingIn',
      'exhaustTopCutIn',
      'exhaustTopCutOffsetIn',
      'exhaustInsertIn',
      'exhaustInsertOffsetIn',
      'exhaustSeatDepthIn',
    ],
  },
  {
    id: 'intake',
    title: 'Intake face, dowels, rocker stand, cam',
    about: 'The intake face’s angle is from square to the deck: positive when the face opens toward the valley.',
    keys: [
      'intakeFaceDeg',
      'faceHeightIn',
      'portXIn',
      'portZIn',
      'dowelXIn',
      'dowelDepthIn',
      'rockerXIn',
      'rockerZIn',
      'camXIn',
      'camZIn',
    ],
  },
  {
    id: 'bolts',
    title: 'Bolts',
    about: 'What all bolts have in common; single ones that differ stand below.',
    keys: ['boltCount', 'boltHoleIn', 'boltIn', 'boltHoleLengthIn', 'spotFaceIn', 'threadLeftIn'],
  },
]

export const deepEdgeOptions = [
  { value: 'exhaust', label: 'Exhaust edge', hint: 'the usual way' },
  { value: 'intake', label: 'Intake edge' },
]
export const chamberShapeOptions = [
  { value: 'open', label: 'Open' },
  { value: 'closed', label: 'Closed' },
  { value: 'flat-deck', label: 'Flat deck' },
]

/** The groups that a record of this shape has. */
export function groupsOf(shape: string): readonly Group[] {
  const of = chamberShapeOf(shape)
  return groups
    .map((group) => ({ ...group, keys: group.keys.filter((key) => appliesTo(of, key)) }))
    .filter(({ keys }) => keys.length > 0)
}

/** "flat deck" */
export const shapeWords = (shape: string): string =>
  (chamberShapeOptions.find(({ value }) => value === shape)?.label ?? shape).toLowerCase()
export const supplyOptions = [
  { value: 'stock', label: 'stock' },
  { value: 'special', label: 'special order' },
]

export const boltLabels = {
  label: 'Name',
  xIn: 'From the shallow edge',
  yIn: 'From end 1',
  diameterIn: 'Hole',
  boltIn: 'Bolt',
  lengthIn: 'Hole length',
  threadLeftIn: 'Thread left',
} as const
export type BoltFigure = Exclude<keyof typeof boltLabels, 'label'>
export const boltFigures = Object.keys(boltLabels).filter((key): key is BoltFigure => key !== 'label')
