import { RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { hasPeople } from '@/lib/data/people'
import { ownerCodeFits, spendOwnerCode } from '@/lib/data/owner-code'
import type { SetUpShop } from '@/lib/schemas/shop'
import { openShop } from './open-shop'

/** Whether this is a shop in which nobody can sign in yet. */
export const needsSetUp = async (): Promise<boolean> => !(await hasPeople(await db()))

/** The first visit of a real shop: whoever reads the console's code makes the owner. There is nobody to act as yet. */
export async function setUpShop({ code, shop, owner }: SetUpShop, { now }: { now: Date }): Promise<{ signIn: string }> {
  if (!(await needsSetUp())) throw new RefusedError({ code: 'not-found', message: 'This shop is already set up.' })
  if (!(await ownerCodeFits(code))) {
    const message = 'Wrong code. Enter the code shown on the console. Each start shows a new code.'
    throw new RefusedError({ code: 'invalid', message, fields: { code: message } })
  }
  await openShop({ shop, owner, mode: 'shop' }, { now })
  await spendOwnerCode()
  return { signIn: owner.signIn }
}
