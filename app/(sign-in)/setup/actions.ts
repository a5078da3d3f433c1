'use server'
import type { Result } from '@/lib/core/errors'
import { setUpShopSchema } from '@/lib/schemas/shop'
import { setUpShop } from '@/lib/use-cases/shop/set-up-shop'
import { refusalOf } from '@/lib/web/error-to-response'
import { askedFrom } from '@/lib/web/asked-from'
import { refuseTooMany } from '@/lib/web/throttle'

/** The one change without somebody signed in: the console's code stands in for a person. */
export async function setUpShopAction(sent: { input: unknown }): Promise<Result<{ signIn: string }>> {
  try {
    await refuseTooMany('code', await askedFrom())
    const parsed = setUpShopSchema.safeParse(sent?.input)
    if (!parsed.success) {
      const fields = Object.fromEntries(parsed.error.issues.map((issue) => [issue.path.join('.'), issue.message]))
      const message = Object.values(fields)[0] ?? 'Something in the form is not right.'
      return { ok: false, refusal: { code: 'invalid', message, fields } }
    }
    return { ok: true, value: await setUpShop(parsed.data, { now: new Date() }) }
  } catch (error) {
    return { ok: false, refusal: refusalOf(error) }
  }
}
