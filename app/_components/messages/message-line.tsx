import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import type { MailSeen, MessageSeen } from '@/lib/use-cases/messages/see-messages'
import { isAddressWrong } from '@/lib/core/messages/mail-fault'
import { mailFaultWords, mailStateLabels, messageKindLabels, wayLabels } from '@/lib/words/messages'
import { ChangeAddress } from './change-address'
import { MailDeeds } from './mail-deeds'
import styles from './messages.module.css'

type Props = { message: MessageSeen; customerId: string; zone: string; locale: string }

/** One message: when and by whom, how and where to, whether it left, and its text on asking. */
export function MessageLine({ message, customerId, zone, locale }: Props) {
  const { mail } = message
  return (
    <li className="stack">
      <p className="soft">
        <When at={message.at} zone={zone} locale={locale} />, {message.by}
        {message.byItself && (mail?.state === 'sent' ? ', went out by itself' : ', goes out by itself')}
      </p>
      <p>
        <strong>{messageKindLabels[message.kind]}</strong>, {sentTo(message)}
        {mail && `: ${mailStateLabels[mail.state]}`}
      </p>
      {mail && isInTrouble(mail) && (
        <Trouble message={message} mail={mail} customerId={customerId} zone={zone} locale={locale} />
      )}
      {message.isBlanked ? (
        <p className="soft">The text was removed with the customer’s personal data.</p>
      ) : (
        <details>
          <summary>Text</summary>
          {message.way !== 'sms' && (
            <p>
              <strong>{message.subject}</strong>
            </p>
          )}
          <p className={styles.text}>{message.body.replaceAll('{link}', '(the customer’s link)')}</p>
        </details>
      )}
    </li>
  )
}

function sentTo({ way, toAddress }: MessageSeen): string {
  return toAddress === '' ? wayLabels[way] : `${wayLabels[way]} to ${toAddress}`
}

const isInTrouble = ({ state, fault }: MailSeen): boolean => state === 'failed' || (state === 'queued' && fault !== '')

/** Why it did not leave, what the server said, when it is tried again, and what can be done. */
function Trouble({ message, mail, customerId, zone, locale }: Props & { mail: MailSeen }) {
  return (
    <Notice kind="caution" title="Not sent" live={false}>
      <p>
        {mail.fault !== '' && mailFaultWords[mail.fault]}
        {mail.answer !== '' && ` The server said: ${mail.answer}`}{' '}
        {mail.fault !== '' && isAddressWrong(mail.fault) && (
          <ChangeAddress customerId={customerId} of={message.toName} />
        )}
      </p>
      {mail.state === 'queued' && (
        <p>
          Tried {mail.tries === 1 ? 'once' : `${mail.tries} times`}. Next try{' '}
          <When at={mail.nextAt} zone={zone} locale={locale} />.
        </p>
      )}
      <MailDeeds messageId={message.id} />
    </Notice>
  )
}
