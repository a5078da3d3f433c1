import type { Missing } from '@/lib/core/route/types'
import type { Dossier } from './dossier'
import { gapsOf } from './gaps'

/** What was measured on this head and is out of tolerance, not waived: with the step that measured it. */
export const outOfToleranceOf = (dossier: Dossier): readonly Missing[] =>
  gapsOf(dossier).filter(({ what }) => what === 'tolerance')
