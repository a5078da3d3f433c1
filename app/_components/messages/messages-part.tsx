import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { MessageLine } from './message-line'
import { WriteToCustomer } from './write-to-customer'

/** What was written to the customer of a job, and the way to write again: for the counter and the owner. */
export async function MessagesPart({ actor, number }: { actor: Actor; number: string }) {
  if (!can(actor, 'message.write')) return null
  const view = await seeMessages(actor, number)
  return (
    <section className="part" aria-label="Messages" id="messages">
      <h2>Messages</h2>
      <WriteToCustomer view={view} />
      {view.messages.length === 0 ? (
        <p className="soft">Nothing was written to the customer yet.</p>
      ) : (
        <ul className="plain-list">
          {view.messages.map((message) => (
            <MessageLine
              key={message.id}
              message={message}
              customerId={view.customerId}
              zone={view.timeZone}
              locale={view.locale}
            />
          ))}
        </ul>
      )}
      {view.more && <p className="soft">Only the newest {view.messages.length} are shown.</p>}
    </section>
  )
}
