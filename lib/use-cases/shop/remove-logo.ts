import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changeLogoRow } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { RemoveLogo } from '@/lib/schemas/logo'

/** From now on the papers carry the name alone. The file stays: released papers were made with it. */
export async function removeLogo(actor: Actor, { seen }: RemoveLogo, moment: Moment): Promise<{ removed: true }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    await changeLogoRow(ctx, seen, null)
    const changes = { logo: { from: seen, to: null } }
    ctx.audit({ action: 'shop-logo.remove', subjectId: '1', changes })
    return { removed: true }
  })
}
