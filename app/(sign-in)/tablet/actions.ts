'use server'
import { enrolTabletSchema, type EnrolTablet } from '@/lib/schemas/tablet'
import { enrolTablet } from '@/lib/use-cases/tablets/enrol-tablet'
import { askedFrom } from '@/lib/web/asked-from'
import { runAction, type Sent } from '@/lib/web/define-action'
import { endSessionHere } from '@/lib/web/tablet-session'
import { setTabletToken } from '@/lib/web/tablet-cookie'
import { refuseTooMany } from '@/lib/web/throttle'

/** Nobody is signed in: the owner's code stands in for them. Whoever was signed in on this device with a password is not any more. */
export async function enrolTabletAction(sent: Sent<EnrolTablet>) {
  return runAction('enrolTablet', enrolTabletSchema, sent, async (input, { now }) => {
    await refuseTooMany('code', await askedFrom())
    const { token } = await enrolTablet(input, { now })
    await setTabletToken(token)
    await endSessionHere('tablet enrolled')
    return { enrolled: true }
  })
}
