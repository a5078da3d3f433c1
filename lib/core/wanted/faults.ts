import { wantedPorts, type WantedFigures, type WantedKey } from './figures'

/** Two wanted figures that cannot both be right: `key` is the one that is told, `than` the one that it is held against. */
export type WantedFault = {
  readonly code: 'least-over-most' | 'open-under-seat' | 'bind-over-height' | 'bind-before-lift'
  readonly key: WantedKey
  readonly than: WantedKey
  /** Both in the core's unit of the first. */
  readonly value: number
  readonly other: number
}

/** Typed decimals: a billionth is nothing that was meant. */
const hair = 1e-9

/**
 * Wanted figures that contradict each other, in inches and lbf.
 *
 * @param wanted of one place, or of all together
 *
 * Least over most clearance; the valve open under the pressure on the seat; coil bind not under the installed height; a
 * spring that is solid before full lift: lift > installed − coil bind. Derived: a spring pushes harder the shorter it is, and
 * cannot be shorter than its coil bind.
 * Example: installed 1.800, coil bind 1.250, lift 0.560 → "bind-before-lift": 0.560 of 0.550.
 */
export function wantedFaults(wanted: WantedFigures): readonly WantedFault[] {
  const above = (code: WantedFault['code'], key: WantedKey, than: WantedKey): WantedFault | null => {
    const [one, other] = [wanted[key], wanted[than]]
    if (!one || !other || one.value <= other.value + hair) return null
    return { code, key, than, value: one.value, other: other.value }
  }
  return wantedPorts
    .flatMap((port) => [
      above('least-over-most', `${port}GuideLeastIn`, `${port}GuideMostIn`),
      above('open-under-seat', `${port}SeatPressureLbf`, `${port}OpenPressureLbf`),
      ...springFaults(port, wanted),
    ])
    .filter((fault) => fault !== null)
}

function springFaults(port: (typeof wantedPorts)[number], wanted: WantedFigures): (WantedFault | null)[] {
  const [coilBind, height, lift] = [
    wanted[`${port}CoilBindIn`],
    wanted[`${port}InstalledHeightIn`],
    wanted[`${port}LiftIn`],
  ]
  if (!coilBind || !height) return []
  const keys = { key: `${port}CoilBindIn`, than: `${port}InstalledHeightIn` } as const
  if (coilBind.value >= height.value - hair) {
    return [{ code: 'bind-over-height', ...keys, value: coilBind.value, other: height.value }]
  }
  const travelIn = height.value - coilBind.value
  if (!lift || lift.value <= travelIn + hair) return []
  return [{ code: 'bind-before-lift', ...keys, key: `${port}LiftIn`, value: lift.value, other: travelIn }]
}
