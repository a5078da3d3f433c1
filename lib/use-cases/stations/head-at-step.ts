import type { StepId } from '@/lib/core/route/step-ids'
import type { RouteStep } from '@/lib/core/route/types'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { Dossier } from '@/lib/dossier/dossier'
import { headDrawing } from '@/lib/dossier/head-drawing'

/** Where somebody must see which edge is deep, which hole is which, and where the corners are touched. */
const drawnAt: readonly StepId[] = [
  'thickness',
  'angle-cut',
  'arrival-figures',
  'flat-cut',
  'bolt-seats',
  'bolt-fit',
  'bolt-reach',
  'dowel-fit',
  'finished',
]

/** This head, drawn, at the steps where its edges, holes and corners are worked on; null at the others. */
export const headAtStep = (dossier: Dossier, { stepId }: RouteStep): HeadDrawing | null =>
  drawnAt.includes(stepId) && dossier.chambers > 0 ? headDrawing(dossier) : null
