import { castingFigures, type CastingFigureKey } from './figures'

/** Flat deck: the valves sit in a flat face and the chamber is in the piston. */
export const chamberShapes = ['open', 'closed', 'flat-deck'] as const
export type ChamberShape = (typeof chamberShapes)[number]

/**
 * Figures that only a head of this shape has: the form hides the others, and a record does not keep them. A flat-deck head
 * is cut flat, so it has no largest angle.
 */
export const appliesTo = (shape: ChamberShape, key: CastingFigureKey): boolean =>
  shape === 'flat-deck'
    ? !castingFigures[key].perForm && !seatCircle.test(key) && key !== 'largestAngleDeg'
    : !flatDeckKeys.some((one) => one === key)

const flatDeckKeys: readonly CastingFigureKey[] = [
  'intakeRecessionLeastIn',
  'intakeRecessionMostIn',
  'exhaustRecessionLeastIn',
  'exhaustRecessionMostIn',
  'injectorProtrusionLeastIn',
  'injectorProtrusionMostIn',
  'injectorXIn',
]
const seatCircle = /(Sealing|TopCut|Insert|SeatDepth)/

/** As a record has it; a head without one is taken as open. */
export const chamberShapeOf = (stored: string | null | undefined): ChamberShape =>
  chamberShapes.find((shape) => shape === stored) ?? 'open'
