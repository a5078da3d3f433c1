import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { factorAddress, inBase32, newFactorKey, stepOfCode } from '@/lib/data/factor-codes'
import { personById } from '@/lib/data/people'
import { dropFactor, newRecoveryCodes, openKey, renewRecoveryCodes, sealKey } from '@/lib/data/second-factor'
import { shopOf } from '@/lib/data/shop'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ConfirmFactor, OfPerson } from '@/lib/schemas/person'

const shownOnce = () =>
  new RefusedError({ code: 'wrong-state', message: 'This was already shown once. Begin again for a new one.' })

export type FactorDraft = { readonly key: string; readonly address: string }

/** A new key for the person's app. Nothing is asked of it until a code of it was typed; an earlier one stays in use. */
export async function startFactor(actor: Actor, _input: object, moment: Moment): Promise<FactorDraft> {
  must(allow(actor, 'job.see'))
  const key = newFactorKey()
  const client = await db()
  const [{ signIn }, shop] = [await personById(client, actor.personId), await shopOf(client)]
  let made = false
  await write(actor, moment, async (ctx) => {
    const factorDraft = sealKey(actor.personId, key)
    await ctx.tx.person.update({ where: { id: actor.personId }, data: { factorDraft } })
    made = true
  })
  if (!made) throw shownOnce()
  return { key: inBase32(key), address: factorAddress(key, signIn, shop.name) }
}

/** The first code of the new key puts it to use, and gives the recovery codes: shown this once, kept as hashes. */
export async function confirmFactor(
  actor: Actor,
  { code }: ConfirmFactor,
  moment: Moment,
): Promise<{ codes: readonly string[] }> {
  must(allow(actor, 'job.see'))
  const { id, factorDraft } = await personById(await db(), actor.personId)
  const key = openKey(id, factorDraft)
  if (!key) throw new RefusedError({ code: 'wrong-state', message: 'Begin again: there is no new key to confirm.' })
  const step = stepOfCode(key, code, null, moment.now)
  if (step === null) {
    const message = 'This code does not fit. Type the one the app shows now, and check the clock of the phone.'
    throw new RefusedError({ code: 'invalid', message, fields: { code: message } })
  }
  const codes = newRecoveryCodes()
  let made = false
  await write(actor, moment, async (ctx) => {
    const changed = await ctx.tx.person.updateMany({
      where: { id, factorDraft },
      data: { factorKey: factorDraft, factorDraft: null, factorStep: step },
    })
    conflictUnless(changed, 'your second factor')
    await renewRecoveryCodes(ctx.tx, id, codes, ctx.now)
    ctx.audit({ action: 'person.set-factor', subjectId: id })
    made = true
  })
  if (!made) throw shownOnce()
  return { codes }
}

/** New recovery codes; the old ones work no more. */
export async function renewCodes(actor: Actor, _input: object, moment: Moment): Promise<{ codes: readonly string[] }> {
  must(allow(actor, 'job.see'))
  const codes = newRecoveryCodes()
  let made = false
  await write(actor, moment, async (ctx) => {
    const { factorKey } = await personById(ctx.tx, actor.personId)
    if (factorKey === null) {
      throw new RefusedError({ code: 'wrong-state', message: 'You have no second factor. Set one up first.' })
    }
    await renewRecoveryCodes(ctx.tx, actor.personId, codes, ctx.now)
    ctx.audit({ action: 'person.renew-codes', subjectId: actor.personId })
    made = true
  })
  if (!made) throw shownOnce()
  return { codes }
}

/** A person gives up their own. */
export async function dropOwnFactor(actor: Actor, _input: object, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'job.see'))
  return write(actor, moment, async (ctx) => {
    await dropFactor(ctx.tx, actor.personId)
    ctx.audit({ action: 'person.drop-factor', subjectId: actor.personId })
    return { personId: actor.personId }
  })
}

/** The owner takes that of somebody who lost phone and recovery codes. */
export async function clearFactor(actor: Actor, { personId }: OfPerson, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  return write(actor, moment, async (ctx) => {
    const { factorKey } = await personById(ctx.tx, personId)
    if (factorKey !== null) {
      await dropFactor(ctx.tx, personId)
      ctx.audit({ action: 'person.clear-factor', subjectId: personId })
    }
    return { personId }
  })
}
