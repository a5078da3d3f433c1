import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { currentSettings } from '@/lib/data/settings'
import { write, type Moment } from '@/lib/data/write'
import type { SetCornerInset } from '@/lib/schemas/corner-inset'

/**
 * Where this shop touches the corners of a head. Whoever reads the first corners answers it; once it is answered, only the
 * owner changes it, since figures of heads in house hang on it.
 */
export async function setCornerInset(
  actor: Actor,
  { edge, end }: SetCornerInset,
  moment: Moment,
): Promise<{ version: number }> {
  const mayAnswer = allow(actor, 'reading.record-bench')
  const mayChange = allow(actor, 'settings.change')
  if (!mayChange.ok) must(mayAnswer)
  return write(actor, moment, async (ctx) => {
    const { version, values } = await currentSettings(ctx.tx)
    if (values.cornerInset !== null && !mayChange.ok) {
      throw new RefusedError({
        code: 'wrong-state',
        message: 'Somebody has answered this already. Reload the page; the owner can change it in the Back room.',
      })
    }
    const cornerInset = { edgeIn: edge.value, endIn: end.value }
    return addSettingsVersion(
      ctx,
      version,
      values.cornerInset === null ? 'Asked at first use' : 'Corners are touched elsewhere from now on',
      (before) => ({ ...before, cornerInset }),
      'settings.change',
    )
  })
}
