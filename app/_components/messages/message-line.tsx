import { When } from '@/app/_components/ui/when'
import type { MessageSeen } from '@/lib/use-cases/messages/see-messages'
import { mailStateLabels, messageKindLabels, wayLabels } from '@/lib/words/messages'
import styles from './messages.module.css'

type Props = { message: MessageSeen; zone: string; locale: string }

/** One message: when and by whom, how and where to, whether it left, and its text on asking. */
export function MessageLine({ message, zone, locale }: Props) {
  const { mail } = message
  return (
    <li className="stack">
      <p className="soft">
        <When at={message.at} zone={zone} locale={locale} />, {message.by}
        {message.byItself && ', went out by itself'}
      </p>
      <p>
        <strong>{messageKindLabels[message.kind]}</strong>, {sentTo(message)}
        {mail && `: ${mailStateLabels[mail.state]}`}
      </p>
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
