import { RefusedError } from '@/lib/core/errors'
import { isOwnStep } from '@/lib/core/route/step-ids'
import { tableOf } from '@/lib/core/route/table'
import type { Reader } from '@/lib/data/db'
import { settingsAt } from '@/lib/data/settings'

/** Work that the rules of this visit do not know would be ordered and never come up on its route. */
export async function refuseUnknownWork(
  reader: Reader,
  { rulesVersion }: { readonly rulesVersion: number },
  works: readonly string[],
): Promise<void> {
  const own = works.filter(isOwnStep)
  if (own.length === 0) return
  const { rules } = (await settingsAt(reader, rulesVersion)).values
  if (own.every((work) => tableOf(rules).rowOf(work)?.own?.retired === false)) return
  throw new RefusedError({
    code: 'wrong-state',
    message:
      'The steps of this head do not include this work. The owner can apply newer steps: Back room, Steps and stations.',
  })
}
