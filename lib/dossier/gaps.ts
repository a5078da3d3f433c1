import { completeness } from '@/lib/core/route/completeness'
import type { Missing } from '@/lib/core/route/types'
import type { VisitWithRoute } from '@/lib/data/visits'

/** What stands between this visit and its release, waived gaps left out. */
export const gapsOf = ({ facts }: VisitWithRoute): readonly Missing[] => completeness(facts)
