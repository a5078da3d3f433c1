import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import { callInsteadAction, tryMailAgainAction } from './actions'

/** What can be done about a mail that was not sent. */
export function MailDeeds({ messageId }: { messageId: string }) {
  return (
    <div className="row">
      <ActionButton action={tryMailAgainAction} input={{ messageId }}>
        Try again
      </ActionButton>
      <ActionButton action={callInsteadAction} input={{ messageId }}>
        Called instead
      </ActionButton>
    </div>
  )
}
