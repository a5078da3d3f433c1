import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { WriteToCustomer } from './write-to-customer'

/** The question about one finding, as a text to the customer. */
export async function AskByMessage({ actor, number, findingId }: { actor: Actor; number: string; findingId: string }) {
  if (!can(actor, 'message.write')) return null
  return (
    <section className="stack part" aria-label="By message">
      <h2>By message</h2>
      <WriteToCustomer view={await seeMessages(actor, number)} findingId={findingId} />
    </section>
  )
}
