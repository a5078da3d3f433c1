import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { newTabletToken, tokenHashOf } from '@/lib/data/device-secrets'
import { newId } from '@/lib/data/ids'
import { personById } from '@/lib/data/people'
import { actorOf } from '@/lib/data/sessions'
import { codeMaker, spendCode } from '@/lib/data/tablets'
import { write } from '@/lib/data/write'
import type { EnrolTablet } from '@/lib/schemas/tablet'

export type Enrolled = { readonly tabletId: string; readonly token: string }

/**
 * A device types the code and is a tablet from then on. Nobody is signed in on it: the change is put down to the owner
 * who made the code, as long as they still may. The token goes into the device's cookie; only its hash is kept.
 */
export async function enrolTablet({ code }: EnrolTablet, { now }: { readonly now: Date }): Promise<Enrolled> {
  const maker = await makerOf(code)
  const token = newTabletToken()
  const tabletId = newId(now)
  await write(maker, { now }, async (ctx) => {
    const spent = await spendCode(ctx.tx, code, now)
    if (!spent) throw wrongCode()
    const { name, station, byId } = spent
    await ctx.tx.tablet.create({
      data: { id: tabletId, name, station, tokenHash: tokenHashOf(token), enrolledAt: now, byId, lastSeenAt: now },
    })
    ctx.audit({ action: 'tablet.enrol', subjectId: tabletId, changes: { name, station } })
  })
  return { tabletId, token }
}

/** The owner who made a code, if they are one still. */
async function makerOf(code: string): Promise<Actor> {
  const client = await db()
  const byId = await codeMaker(client, code)
  if (byId === null) throw wrongCode()
  const person = await personById(client, byId)
  const maker = actorOf(person)
  // The device is told no more than of a wrong code.
  if (person.retiredAt !== null || !can(maker, 'tablet.change')) throw wrongCode()
  return maker
}

/** A code that never was, was used, or is too old: one answer for all. */
function wrongCode(): RefusedError {
  const message = 'This code is wrong, was used already, or is older than ten minutes. Ask the owner for a new one.'
  return new RefusedError({ code: 'invalid', message, fields: { code: message } })
}
