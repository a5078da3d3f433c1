import { seeMailServer } from '@/lib/use-cases/messages/see-mail-server'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { changedBy } from '../../_components/changed-by'
import { PageHead } from '../../_components/page-head'
import { ServerForm } from '../_components/server-form'
import { TestMailForm } from '../_components/test-mail-form'

export const metadata = { title: 'Mail server' }

export default async function MailServerPage() {
  const actor = await requirePerson('settings.change')
  const { server, last } = await seeMailServer(actor)
  return (
    <>
      <PageHead up={['/back-room/messages', 'Messages']} title="Mail server">
        <p className="soft">
          The server that the shop’s own mail goes out over; whoever runs the mailbox gives these out. Leave the host
          empty to send no mail.
        </p>
      </PageHead>
      <ServerForm server={server} by={changedBy(last, await shopLocale())} />
      {server.host !== '' && (
        <section className="part" aria-label="Test mail">
          <h2>Test mail</h2>
          <TestMailForm to={server.fromAddress} />
        </section>
      )}
    </>
  )
}
