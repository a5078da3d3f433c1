import type { VisitRecord } from '@/lib/data/visit-records'
import { hrefOf } from '@/lib/dossier/where-to'

export type WhereNeeded = Readonly<Record<string, { readonly message: string; readonly href: string }>>

/** Where each figure that a plan may be short of is entered, by the name that the refusal gives it. */
export function whereNeeded(visits: readonly VisitRecord[]): WhereNeeded {
  const [first] = visits
  if (!first) return {}
  const unread = visits.find((visit) => !visit.readings.some((set) => set.stepId === 'chambers')) ?? first
  const chambers = { stepId: 'chambers', occurrence: '', orderId: null } as const
  const casting = first.head.castingId
  const onRecord = casting && {
    message: 'Open the casting record',
    href: `/back-room/castings/${casting}`,
  }
  return {
    targetCc: { message: 'Enter the target on the job', href: `/jobs/${first.job.number}` },
    presentCc: {
      message: 'Measure the chambers',
      href: hrefOf(unread, { kind: 'step', step: chambers, station: 'measuring-bench' }),
    },
    ...(onRecord && { thouPerCc: onRecord, milledWidthIn: onRecord, areaIn2: onRecord }),
  }
}
