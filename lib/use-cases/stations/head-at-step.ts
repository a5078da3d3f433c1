import type { StepId } from '@/lib/core/route/step-ids'
import type { RouteStep } from '@/lib/core/route/types'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { Dossier } from '@/lib/dossier/dossier'
import { headDrawing } from '@/lib/dossier/head-drawing'

/** Where somebody must see which edge is deep and which hole is which. */
const drawnAt: readonly StepId[] = ['angle-cut', 'flat-cut', 'bolt-seats', 'bolt-fit', 'bolt-reach', 'dowel-fit']

/** This head, drawn, at the steps where its edges and holes are worked on; null at the others. */
export const headAtStep = (dossier: Dossier, { stepId }: RouteStep): HeadDrawing | null =>
  drawnAt.includes(stepId) && dossier.chambers > 0 ? headDrawing(dossier) : null
