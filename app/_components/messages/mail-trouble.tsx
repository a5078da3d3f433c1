import { Link } from '@/app/_components/ui/link'
import { Phone } from '@/app/_components/ui/phone'
import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { isAddressWrong } from '@/lib/core/messages/mail-fault'
import { seeMailTrouble, type MailTrouble as Trouble } from '@/lib/use-cases/messages/see-mail-trouble'
import { mailFaultWords, messageKindLabels } from '@/lib/words/messages'
import { ChangeAddress } from './change-address'
import { MailDeeds } from './mail-deeds'

/** Mails to customers that did not leave, one line each with what to do; nothing while all left. */
export async function MailTrouble({ actor }: { actor: Actor }) {
  if (!can(actor, 'message.write')) return null
  const mails = await seeMailTrouble(actor)
  if (mails.length === 0) return null
  return (
    <section className="part" aria-label="Mails not sent">
      <h2>Mails not sent</h2>
      <ul className="plain-list">
        {mails.map((mail) => (
          <TroubleLine key={mail.messageId} mail={mail} />
        ))}
      </ul>
    </section>
  )
}

function TroubleLine({ mail }: { mail: Trouble }) {
  return (
    <li className="row spread">
      <span>
        <Link href={`/jobs/${mail.jobNumber}`}>{mail.jobNumber}</Link>, {mail.customer} <Phone number={mail.phone} />:{' '}
        {messageKindLabels[mail.kind]}. {mail.fault !== '' && mailFaultWords[mail.fault]}
        {!mail.isFailed && ' It is tried again.'}{' '}
        {mail.fault !== '' && isAddressWrong(mail.fault) && (
          <ChangeAddress customerId={mail.customerId} of={mail.customer} />
        )}
      </span>
      <MailDeeds messageId={mail.messageId} />
    </li>
  )
}
