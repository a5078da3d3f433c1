/** Flat deck: the valves sit in a flat face and the chamber is in the piston. */
export const chamberShapes = ['open', 'closed', 'flat-deck'] as const
export type ChamberShape = (typeof chamberShapes)[number]

/** As a record has it; a head without one is taken as open. */
export const chamberShapeOf = (stored: string | null | undefined): ChamberShape =>
  chamberShapes.find((shape) => shape === stored) ?? 'open'
