import type { StepRef } from './keys'

/** On what condition a step of the table comes, in the words of the shop; its figures are among the limits. */
export const conditionWords: Readonly<Partial<Record<StepRef, string>>> = {
  'wash-in': 'a used head',
  crack: 'a used head',
  pressure: 'it was overheated, the cutter may have broken through, or after weld, insert or guide work',
  chambers: 'a target, a class limit or the engine is known, and it was not bought cut by its maker',
  'open-chamber': 'the target is larger than the chamber by more than the tolerance',
  'arrival-count': 'for each outside order that comes back',
  'arrival-figures': 'for each outside order that comes back',
  'flat-cut': 'the plan has a flat part that no vendor cut',
  rinse: 'after machining, before cc, flow or seats are measured',
  intake: 'one manifold spans two heads, and the figure passes the limit (always for an angle cut)',
  'bolt-reach': 'more is removed since new than the limit',
  'dowel-fit': 'more is removed since new than the limit',
  'seat-after': 'the clean-up is deeper than the limit',
  'seat-work': 'the seat check after cut fails',
  blend: 'seat work left an edge to the chamber',
  heights: 'seat, valve, guide or spring is changed',
  rocker: 'more is cut than the limit',
  cam: 'the cam is in the head',
  finished: 'something that was measured is changed',
  ptv: 'the loss passes the limit, or less clearance is left than the limit',
  'wash-out': 'after machining',
  assemble: 'it came assembled, or assembly is ordered',
  leak: 'it came assembled, or assembly is ordered',
  wrap: 'after machining',
}
