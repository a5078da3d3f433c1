export const flowPorts = ['intake', 'exhaust'] as const
export type FlowPort = (typeof flowPorts)[number]

/** How a run was taken. Null: not noted. */
export type FlowConditions = {
  /** Depression across the port, inches of water. */
  readonly testPressureInH2O: number | null
  readonly boreFixtureIn: number | null
  readonly valveDiameterIn: number | null
  readonly entryFitting: string
  readonly exhaustFitting: string
  /** Read with the valve shut, at the same pressure; null: not read. */
  readonly leakCfm: number | null
  readonly port: FlowPort
  /** Which head, and which of its ports when they differ by hand. */
  readonly headId: string
}

export type FlowPoint = {
  readonly liftIn: number
  /** Null: not taken, then `notTaken` says why. */
  readonly flowCfm: number | null
  readonly notTaken: string | null
}

export type FlowRun = {
  readonly conditions: FlowConditions
  readonly points: readonly FlowPoint[]
}
