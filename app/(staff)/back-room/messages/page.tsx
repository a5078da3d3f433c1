import { Link } from '@/app/_components/ui/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { seeMailServer } from '@/lib/use-cases/messages/see-mail-server'
import { seeTexts } from '@/lib/use-cases/messages/see-texts'
import { requirePerson } from '@/lib/web/require-actor'
import { byItselfLabels, messageKindLabels } from '@/lib/words/messages'
import { PageHead } from '../_components/page-head'

export const metadata = { title: 'Messages' }

export default async function TextsPage() {
  const actor = await requirePerson('settings.change')
  const { texts, hasServer } = await seeTexts(actor)
  const { server } = await seeMailServer(actor)
  return (
    <>
      <PageHead up={['/back-room', 'Back room']} title="Messages">
        <p className="soft">
          Texts to customers, prepared for each job. The counter sees and can change each one before it is sent.
        </p>
      </PageHead>
      <section className="part" aria-label="Mail server">
        <div className="row spread">
          <h2>Mail server</h2>
          <ButtonLink href="/back-room/messages/server">{hasServer ? 'Change' : 'Enter the mail server'}</ButtonLink>
        </div>
        <p>
          {hasServer
            ? `Mails go out over ${server.host}, from ${server.fromAddress}.`
            : 'None. Texts are sent from the person’s own mail program, as a text message, or copied.'}
        </p>
      </section>
      <section className="part" aria-label="Texts">
        <h2>Texts</h2>
        <ul className="plain-list">
          {texts.map(({ kind, subject, byItself }) => (
            <li key={kind} className="row spread">
              <span>
                <Link href={`/back-room/messages/${kind}`}>{messageKindLabels[kind]}</Link>{' '}
                <span className="soft">{subject}</span>
              </span>
              <span>{byItself ? `Goes out by itself ${byItselfLabels[kind]}` : 'Sent by hand'}</span>
            </li>
          ))}
        </ul>
      </section>
    </>
  )
}
