import type { Cells } from './cells'
import type { Station, StepId, StockStepId } from './step-ids'
import * as when from './conditions'
import type { StepRef } from './keys'

export type StepRow = {
  readonly ref: StepRef
  readonly stepId: StepId
  readonly label: string
  readonly station: Station
  readonly cells: Cells
  readonly when?: when.Condition
}

const row = (ref: StepRef, label: string, station: Station, cells: string, condition?: when.Condition): StepRow => ({
  ref,
  stepId: ref.startsWith('flow-') ? 'flow' : (ref as StepId),
  label,
  station,
  cells: [...cells] as unknown as Cells,
  when: condition,
})

/**
 * Every step once, in working order, as the shop starts; what it made of them since is in `table.ts`. Arrival steps stand here for their label and station; they come per outside order.
 * Follow-up work of a cut is here and nowhere else: a step that is forgotten in this table is forgotten in the shop.
 */
export const stepTable: readonly StepRow[] = [
  row('check-in', 'Check in', 'front-desk', '●●●●'),
  row('wash-in', 'Strip and wash', 'wash', '◐◐◐◐', when.usedHead),
  row('crack', 'Crack check', 'wash', '◐◐◐◐', when.usedHead),
  row('pressure', 'Pressure check', 'wash', '◐◐◐◐', when.pressureDoubt),
  row('thickness', 'Measure thickness', 'measuring-bench', '○●●●'),
  row('chambers', 'Measure chambers', 'measuring-bench', '○◐●●', when.chambersMatter),
  row('seat-before', 'Seat check before', 'measuring-bench', '○○●●'),
  row('flow-before', 'Flow run before', 'flow-bench', '○○○○'),
  row('guides', 'Guides', 'seat-machine', '○○○○'),
  row('inserts', 'Seat inserts', 'seat-machine', '○○○○'),
  row('weld', 'Weld', 'outside', '○○○○'),
  row('straighten', 'Straighten', 'outside', '○○○○'),
  row('steam-holes', 'Steam holes', 'outside', '○○○○'),
  row('groove', 'Groove', 'deck-mill', '○○○○'),
  row('coating', 'Coating', 'outside', '○○○○'),
  row('port', 'Port work', 'port-bench', '○○○○'),
  row('open-chamber', 'Open the chamber', 'port-bench', '◐◐◐◐', when.chamberTooSmall),
  row('flow-after-port', 'Flow run after port work', 'flow-bench', '○○○○'),
  row('angle-cut', 'Angle cut', 'outside', '–––●'),
  row('arrival-count', 'Arrival check', 'front-desk', '◐◐◐◐'),
  row('arrival-figures', 'Arrival measurements', 'measuring-bench', '◐◐◐◐'),
  row('flat-cut', 'Flat cut', 'deck-mill', '–●●◐', when.flatPartLeft),
  row('deburr', 'Deburr and chamfer', 'deck-mill', '–●●●'),
  row('rinse', 'Rinse and dry', 'wash', '◐◐◐◐', when.rinseMatters),
  row('flow-after-cut', 'Flow run after the cut', 'flow-bench', '○○○○'),
  row('intake', 'Intake side', 'intake-mill', '–◐◐◐', when.intakeMoves),
  row('bolt-seats', 'Square the bolt seats', 'bolt-bench', '–––●'),
  row('bolt-fit', 'Bolt fit, slot where needed', 'bolt-bench', '–––●'),
  row('bolt-reach', 'Bolt reach', 'bolt-bench', '–◐◐●', when.boltReachDoubt),
  row('dowel-fit', 'Dowel fit', 'bolt-bench', '–◐◐●', when.dowelDoubt),
  row('seat-after', 'Seat check after cut', 'seat-machine', '–◐●●', when.deepCleanUp),
  row('seat-work', 'Seat work', 'seat-machine', '○◐◐◐', when.seatCheckFails),
  row('blend', 'Blend to the chamber', 'port-bench', '◐◐◐◐', when.edgeLeft),
  row('flow-after', 'Flow run after', 'flow-bench', '○○○○'),
  row('heights', 'Assembly heights', 'assembly', '◐◐◐◐', when.heightsChange),
  row('springs', 'Springs', 'assembly', '○○○○'),
  row('rocker', 'Rocker and pushrod', 'assembly', '–◐◐●', when.rockerMoves),
  row('cam', 'Cam timing and cam bore', 'assembly', '–◐◐◐', when.camInHead),
  row('trial-fit', 'Trial fit', 'assembly', '–––●'),
  row('finished', 'Measure finished', 'measuring-bench', '◐◐●●', when.measuredChanges),
  row('ptv', 'Piston-to-valve check', 'measuring-bench', '–◐◐●', when.pistonNear),
  row('wash-out', 'Final wash', 'wash', '◐●●●', when.machining),
  row('assemble', 'Assemble', 'assembly', '◐◐◐◐', when.assembled),
  row('leak', 'Leak test', 'assembly', '◐◐◐◐', when.assembled),
  row('wrap', 'Oil, bag, wrap', 'assembly', '◐●●●', when.machining),
  row('final', 'Final inspection', 'measuring-bench', '●●●●'),
  row('hand-over', 'Hand over', 'front-desk', '●●●●'),
]

/** What the shop calls each step when it starts, for naming one where no flow run is meant in particular. */
export const stepLabels = {
  ...Object.fromEntries(stepTable.map((entry) => [entry.stepId, entry.label])),
  flow: 'Flow run',
} as Readonly<Record<StockStepId, string>>
