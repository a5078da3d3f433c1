import { z } from 'zod'
import { cutKinds } from '@/lib/core/route/step-ids'
import { requiredText, optionalFigure, words } from './figure'

export const splitKinds = ['flat', 'angle', 'degrees', 'margin'] as const

/** What somebody chooses of a plan; everything else is computed from the record. */
export const planChoiceSchema = z.object({
  pairId: z.uuid(),
  /** Number of the newest version that was seen; 0: there was none. */
  seenVersion: z.number().int().min(0),
  kind: z.enum(cutKinds, 'Choose the kind of cut.'),
  splitBy: z.enum(splitKinds),
  flatIn: optionalFigure('cutDepth'),
  angleIn: optionalFigure('cutDepth'),
  angleDeg: optionalFigure('angle'),
  stopAtIn: optionalFigure('stopAt'),
  /** How deep the seat work still to come will sink the valves. */
  sinkIn: optionalFigure('sink'),
  /** Of a flat-deck head: how thick it is to be. */
  thicknessIn: optionalFigure('thickness').prefault(''),
  reason: words(300),
})
export type PlanChoice = z.output<typeof planChoiceSchema>

export const acceptPlanSchema = z.object({
  planId: z.uuid(),
  by: requiredText('Enter who said yes.', 120),
  how: requiredText('Enter how: at the counter, by phone.', 120),
})
