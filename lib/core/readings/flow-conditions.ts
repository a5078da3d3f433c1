import type { Quantity } from '../units/quantities'

type ConditionField = {
  readonly key: string
  readonly label: string
  readonly hint: string
  readonly quantity?: Quantity
}

/** What a flow run is made with. Two runs are held against each other only when these agree. */
export const flowConditionFields: readonly ConditionField[] = [
  { key: 'chamber', label: 'Chamber', hint: 'Counted from the marked end.' },
  {
    key: 'testPressureInH2O',
    label: 'Test pressure, inH₂O',
    hint: '28 unless the bench cannot hold it.',
    quantity: 'testPressure',
  },
  { key: 'boreFixtureIn', label: 'Bore fixture, in', hint: 'Inside diameter.', quantity: 'bore' },
  {
    key: 'intakeValveIn',
    label: 'Intake valve, in',
    hint: 'The one in the head.',
    quantity: 'valveDiameter',
  },
  {
    key: 'exhaustValveIn',
    label: 'Exhaust valve, in',
    hint: 'The one in the head.',
    quantity: 'valveDiameter',
  },
  { key: 'entryFitting', label: 'Entry', hint: 'Radius plate, clay, manifold.' },
  { key: 'exhaustFitting', label: 'Exhaust fitting', hint: 'Open, or stub pipe.' },
  {
    key: 'leakCfm',
    label: 'Leak, valves shut, cfm',
    hint: 'Reading with both valves shut.',
    quantity: 'flow',
  },
]
