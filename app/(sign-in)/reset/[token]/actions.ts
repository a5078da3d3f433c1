'use server'
import { redirect } from 'next/navigation'
import { resetPasswordSchema, type ResetPassword } from '@/lib/schemas/person'
import { resetPassword } from '@/lib/use-cases/people/reset-password'
import { askedFrom } from '@/lib/web/asked-from'
import { runAction, type Sent } from '@/lib/web/define-action'
import { refuseTooMany } from '@/lib/web/throttle'

/** Nobody is signed in: the link's token stands in for them. The link is used up then, and so is its page. */
export async function resetPasswordAction(sent: Sent<ResetPassword>) {
  const result = await runAction('resetPassword', resetPasswordSchema, sent, async (input, { now }) => {
    await refuseTooMany('code', await askedFrom())
    return resetPassword(input, { now })
  })
  if (result.ok) redirect('/sign-in?said=password')
  return result
}
