import type { StepRef } from './keys'

type Before = Readonly<Partial<Record<StepRef, readonly StepRef[]>>>

const cuts: readonly StepRef[] = ['angle-cut', 'flat-cut']
/** Readings that cannot be had once the deck is cut. */
export const lostByCutting: readonly StepRef[] = [
  'thickness',
  'chambers',
  'seat-before',
  'flow-before',
  'flow-after-port',
]
/** Work that makes chips, grit or dust. */
export const machined: readonly StepRef[] = [
  'guides',
  'inserts',
  'weld',
  'straighten',
  'steam-holes',
  'groove',
  'port',
  'open-chamber',
  'angle-cut',
  'flat-cut',
  'deburr',
  'intake',
  'bolt-seats',
  'bolt-fit',
  'seat-work',
  'blend',
]
const cleaned: readonly StepRef[] = ['wash-in', 'crack']

/**
 * What physics demands: a reading that the next step destroys, a face that the next step starts from, nothing clean after
 * machining until it is washed. A step is refused while one of these is on the route and not done. Everything waits for
 * check in besides: a head that is not here cannot be worked on; and the final inspection for everything.
 */
export const hard: Before = {
  port: ['flow-before'],
  'open-chamber': ['chambers', 'flow-before'],
  'flow-after-port': ['port', 'open-chamber'],
  'angle-cut': lostByCutting,
  // Off the new deck, and the corners of the vendor's work are lost with the next cut.
  'flat-cut': [...lostByCutting, 'angle-cut', 'arrival-figures'],
  deburr: cuts,
  'flow-after-cut': cuts,
  intake: cuts,
  'bolt-seats': ['angle-cut'],
  'bolt-fit': ['angle-cut'],
  'bolt-reach': [...cuts, 'bolt-seats'],
  'dowel-fit': cuts,
  'seat-after': cuts,
  // Seats are cut from the guides.
  'seat-work': ['guides', 'inserts', 'flow-before'],
  blend: ['seat-work'],
  'flow-after': ['port', 'open-chamber', ...cuts, 'seat-work', 'blend'],
  heights: ['guides', 'seat-work'],
  'trial-fit': cuts,
  finished: [...cuts, 'open-chamber', 'seat-work', 'blend'],
  'wash-out': machined,
  assemble: ['wash-out', 'seat-work', 'heights'],
  leak: ['assemble', 'seat-work'],
  wrap: ['wash-out', 'assemble', 'leak'],
}

/** The order a shop works in when nothing speaks against it: told, not enforced. */
export const advised: Before = {
  crack: ['wash-in'],
  pressure: ['wash-in'],
  thickness: cleaned,
  chambers: cleaned,
  'seat-before': cleaned,
  'flow-before': cleaned,
  guides: cleaned,
  inserts: cleaned,
  weld: cleaned,
  straighten: cleaned,
  port: cleaned,
  'angle-cut': ['crack', 'pressure', 'guides', 'inserts', 'weld', 'straighten'],
  'arrival-figures': ['arrival-count'],
  'flat-cut': ['crack', 'pressure', 'arrival-count', 'guides', 'inserts', 'weld', 'straighten'],
  'bolt-seats': ['flat-cut'],
  'bolt-fit': ['flat-cut', 'bolt-seats'],
  'seat-work': [...cleaned, 'seat-before', 'angle-cut'],
  heights: ['blend'],
  springs: ['heights'],
  rocker: cuts,
  cam: cuts,
  finished: ['port', 'guides', 'inserts', 'weld', 'straighten', 'seat-after'],
  ptv: [...cuts, 'seat-work', 'finished'],
  'wash-out': ['finished'],
  assemble: ['finished', 'springs', 'cam'],
  wrap: ['finished'],
}
