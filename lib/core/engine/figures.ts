/** What may be known of an engine, in the core's units; every one optional: what depends on it says "needs …". */
export const engineFigures = {
  boreIn: { label: 'bore', quantity: 'bore' },
  strokeIn: { label: 'stroke', quantity: 'stroke' },
  cylinders: { label: 'cylinders', quantity: 'cylinders' },
  bankAngleDeg: { label: 'bank angle', quantity: 'bankAngle' },
  gasketBoreIn: { label: 'gasket bore', quantity: 'bore' },
  gasketThicknessIn: { label: 'gasket thickness', quantity: 'gasket' },
  deckClearanceIn: { label: 'deck clearance', quantity: 'deckClearance' },
  pistonDishCc: { label: 'piston dish', quantity: 'pistonDish' },
  pistonDomeCc: { label: 'piston dome', quantity: 'pistonDome' },
  intakeLiftIn: { label: 'intake valve lift', quantity: 'lift' },
  exhaustLiftIn: { label: 'exhaust valve lift', quantity: 'lift' },
  intakePtvIn: { label: 'measured piston-to-valve, intake', quantity: 'clearance' },
  exhaustPtvIn: { label: 'measured piston-to-valve, exhaust', quantity: 'clearance' },
} as const

export type EngineFigureKey = keyof typeof engineFigures
export const engineFigureKeys = Object.keys(engineFigures) as EngineFigureKey[]
export type EngineFacts = Readonly<Partial<Record<EngineFigureKey, number>>> & {
  readonly layout: 'inline' | 'v' | 'unknown'
  readonly camInHead: boolean | null
  /** Side-valve engine: no valve sits in the head. Left out: they do. */
  readonly valvesInBlock?: boolean
}
