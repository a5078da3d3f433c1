import type { StepRef } from './keys'

export const causes = [
  'deck-cut',
  'angle-cut',
  'seat-work',
  'chamber-or-port-work',
  'port-work',
  'break-through',
  'weld-insert-guide',
  'valve-changed',
  'shop-step',
] as const
export type Cause = (typeof causes)[number]

/** The steps whose work is the cause. Valves and break-through come from an event and a reading, the rest is the shop's own. */
export const causedBy: Readonly<
  Record<Exclude<Cause, 'valve-changed' | 'break-through' | 'shop-step'>, readonly StepRef[]>
> = {
  'deck-cut': ['angle-cut', 'flat-cut'],
  'angle-cut': ['angle-cut'],
  'seat-work': ['seat-work'],
  'chamber-or-port-work': ['port', 'open-chamber', 'blend'],
  'port-work': ['port', 'open-chamber'],
  'weld-insert-guide': ['weld', 'inserts', 'guides'],
}

/** Work, as against a look at it: to do it again is to take off more. */
export const workSteps: ReadonlySet<StepRef> = new Set(Object.values(causedBy).flat())

const afterDeckCut: readonly StepRef[] = [
  'finished',
  'ptv',
  'bolt-reach',
  'dowel-fit',
  'seat-after',
  'intake',
  'rocker',
  'cam',
  'deburr',
  'wash-out',
  'flow-after-cut',
  'flow-after',
]

/**
 * What must be done again, once the cause came later than the answer. Of the flow runs, only those taken to prove this
 * very work and the last one are undone: the run after port work is the "before" of the cut, and stands.
 */
export const makesDoAgain: Readonly<Record<Cause, readonly StepRef[]>> = {
  'deck-cut': afterDeckCut,
  'angle-cut': [...afterDeckCut, 'bolt-seats', 'bolt-fit', 'trial-fit'],
  'seat-work': ['seat-after', 'finished', 'heights', 'ptv', 'flow-after', 'blend', 'wash-out'],
  'chamber-or-port-work': ['finished', 'flow-after', 'wash-out'],
  'port-work': ['flow-after-port'],
  'break-through': ['pressure'],
  'weld-insert-guide': ['crack', 'pressure', 'thickness', 'seat-after', 'finished'],
  'valve-changed': ['finished', 'flow-after', 'heights', 'ptv', 'seat-after'],
  'shop-step': ['wash-out'],
}

/** A head that was wrapped or inspected is no longer so, whatever was done to it since. */
export const againAfterAnything: readonly StepRef[] = ['wrap', 'final']

export const causeWords: Readonly<Record<Cause, string>> = {
  'deck-cut': 'the deck was cut after it',
  'angle-cut': 'the deck was cut at an angle after it',
  'seat-work': 'the seats were worked after it',
  'chamber-or-port-work': 'chamber or port was worked after it',
  'port-work': 'the port was worked after it',
  'break-through': 'the cutter may have broken through after it',
  'weld-insert-guide': 'weld, insert or guide work was done after it',
  'valve-changed': 'a valve was changed after it',
  'shop-step': 'the shop’s own machining was done after it',
}
