import type { HeadMark } from '@/lib/core/route/head-marks'
import type { Dossier } from './dossier'
import { heldMates } from './of-mates'
import { openRework } from './open-rework'
import { outOfToleranceOf } from './out-of-tolerance'

/** What is odd about a head, the gravest first: each hold, each finding and each held mate by itself. */
export function marksOfHead(dossier: Dossier): HeadMark[] {
  const { visit, facts } = dossier
  const { comebackOfId, comebackCause, comebackPays } = visit
  const urgent: HeadMark[] = visit.job.urgent ? [{ code: 'urgent' }] : []
  const comeback: HeadMark[] =
    comebackOfId === null ? [] : [{ code: 'comeback', cause: comebackCause, pays: comebackPays }]
  return [
    ...urgent,
    ...facts.openHolds.map(({ reason }): HeadMark => ({ code: 'held', reason })),
    ...outOfToleranceOf(dossier).map(({ lack }): HeadMark => ({ code: 'out', lack })),
    ...openRework(dossier).map((rework): HeadMark => ({ code: 'rework', rework })),
    ...comeback,
    ...visit.findings.filter(({ answer }) => answer === null).map(({ what }): HeadMark => ({ code: 'finding', what })),
    ...[...new Set(heldMates(dossier).map(({ tag }) => tag))].map((tag): HeadMark => ({ code: 'mate-held', tag })),
  ]
}
