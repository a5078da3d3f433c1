import { ok, refuse, type Result } from '@/lib/core/errors'
import { completeness } from '@/lib/core/route/completeness'
import { correctedSinceRelease } from '@/lib/dossier/corrected-since-release'
import type { Dossier } from '@/lib/dossier/dossier'
import { hrefOfGap } from '@/lib/dossier/where-to'
import { lackText } from '@/lib/words/lacks'

/**
 * Whether this visit may be released now. The first time everything must be there. Afterwards a revision tells what a
 * correction changed: the head may have left long ago, so what is now out is told on the sheet instead of refused.
 */
export function mayRelease(found: Dossier, reason: string): Result<true> {
  const { visit } = found
  if (visit.returned) return refuse('wrong-state', 'This head was returned as is. It cannot be released.')
  if (visit.takenOffAt) return refuse('wrong-state', 'This head was taken off its job. It cannot be released.')
  if (visit.scrappedAt) return refuse('wrong-state', 'This head is scrapped. It cannot be released.')
  return visit.releases.length === 0 ? firstTime(found) : again(found, reason)
}

function firstTime(found: Dossier): Result<true> {
  const missing = completeness(found.facts)
  if (missing.length === 0) return ok(true)
  const gaps = missing.map((gap) => ({ message: lackText(gap.lack), href: hrefOfGap(found, gap) }))
  const count = gaps.length === 1 ? '1 item is missing' : `${gaps.length} items are missing`
  return refuse(
    'incomplete',
    `This head cannot be released yet: ${count}. ${gaps.map((gap) => gap.message).join('; ')}.`,
    { gaps },
  )
}

function again(found: Dossier, reason: string): Result<true> {
  if (!correctedSinceRelease(found)) {
    return refuse('wrong-state', 'This head is already released. Correct a reading to make a new revision.')
  }
  const message = 'Enter what this revision corrects. It prints on the sheet.'
  return reason === '' ? refuse('invalid', message, { fields: { reason: message } }) : ok(true)
}
