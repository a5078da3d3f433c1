import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { codeHashOf, newTabletCode } from '@/lib/data/device-secrets'
import { newId } from '@/lib/data/ids'
import { codeEnds } from '@/lib/data/tablets'
import { write, type Moment } from '@/lib/data/write'
import type { MakeTabletCode } from '@/lib/schemas/tablet'

export type MadeCode = { readonly code: string; readonly name: string; readonly endsAt: string }

/** A code that one device may type within ten minutes. It is shown this once: only its hash is kept. */
export async function makeTabletCode(actor: Actor, input: MakeTabletCode, moment: Moment): Promise<MadeCode> {
  must(allow(actor, 'tablet.change'))
  const { name, station } = input
  const code = newTabletCode()
  const expiresAt = codeEnds(moment.now)
  let made = false
  await write(actor, moment, async (ctx) => {
    const id = newId(ctx.now)
    await ctx.tx.tabletCode.create({
      data: { id, codeHash: codeHashOf(code), name, station, createdAt: ctx.now, expiresAt, byId: actor.personId },
    })
    ctx.audit({ action: 'tablet-code.make', subjectId: id, changes: { name, station } })
    made = true
  })
  if (!made) {
    throw new RefusedError({ code: 'wrong-state', message: 'This code was already shown once. Make a new one.' })
  }
  return { code, name, endsAt: expiresAt.toISOString() }
}
