import { completeness } from '@/lib/core/route/completeness'
import type { Missing } from '@/lib/core/route/types'
import type { Dossier } from './dossier'

/** What stands between this visit and its release, waived gaps left out. */
export const gapsOf = ({ facts }: Dossier): readonly Missing[] => completeness(facts)
