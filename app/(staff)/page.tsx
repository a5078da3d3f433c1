import { redirect } from 'next/navigation'
import { can } from '@/lib/core/access/can'
import { requirePerson } from '@/lib/web/require-actor'

/** To where this person's day starts. */
export default async function StartPage() {
  const actor = await requirePerson('job.see')
  redirect(can(actor, 'job.book') ? '/counter' : '/stations')
}
