'use client'
import { useState } from 'react'
import { revokeCustomerLinkAction } from '@/app/(staff)/jobs/[number]/link/actions'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import { buttonClass } from '@/app/_components/ui/button-class'
import { mailtoHref, smsHref } from '@/lib/core/messages/hrefs'
import type { MessageWay } from '@/lib/core/messages/kinds'
import { logMessageAction } from './actions'
import styles from './messages.module.css'
import type { Prepared, WritingView } from './written'

type OwnWay = Exclude<MessageWay, 'mail'>
type Props = { view: WritingView; prepared: Prepared; onDone: () => void; onBack: () => void }

/** The text as it leaves, with its link, and the ways to send it that the app cannot follow: the person says it was sent. */
export function PreparedText({ view, prepared, onDone, onBack }: Props) {
  const [way, setWay] = useState<OwnWay | null>(null)
  const { customer, hasMail } = view
  const { subject, body } = prepared.text
  return (
    <div className={`stack ${styles.write}`} role="group" aria-label="The text to send">
      <p>
        <strong>{subject}</strong>
      </p>
      <p className={styles.text}>{body}</p>
      <div className="row">
        {hasMail && (
          <a
            className={buttonClass('plain')}
            href={mailtoHref(customer.email, subject, body)}
            onClick={() => setWay('own-mail')}
          >
            Open in my mail program
          </a>
        )}
        {customer.dial !== '' && (
          <a className={buttonClass('plain')} href={smsHref(customer.dial, body)} onClick={() => setWay('sms')}>
            Open as a text message
          </a>
        )}
        <CopyButton text={body} onCopy={() => setWay('copy')} />
      </div>
      <Outcome prepared={prepared} way={way} onDone={onDone} onBack={onBack} />
    </div>
  )
}

function CopyButton({ text, onCopy }: { text: string; onCopy: () => void }) {
  const [said, setSaid] = useState('')
  async function copy() {
    onCopy()
    try {
      await navigator.clipboard.writeText(text)
      setSaid('Copied.')
    } catch {
      setSaid('This browser does not copy here by itself: mark the text above and copy it.')
    }
  }
  return (
    <>
      <Button onClick={copy}>Copy the text</Button>
      <span role="status">{said}</span>
    </>
  )
}

type OutcomeProps = Pick<Props, 'prepared' | 'onDone' | 'onBack'> & { way: OwnWay | null }

/** Sent: it is written down. Not sent, or back to the form: its link opens nothing any more. */
function Outcome({ prepared: { written, text }, way, onDone, onBack }: OutcomeProps) {
  const { run, pending, refusal, refusalRef } = useAction()
  const sent = () =>
    way && run({ action: logMessageAction, input: { ...written, way, linkId: text.linkId }, onDone, name: 'sent' })
  const notSent = () =>
    text.linkId === ''
      ? onBack()
      : run({ action: revokeCustomerLinkAction, input: { linkId: text.linkId }, onDone: onBack, name: 'not sent' })
  return (
    <div className="stack">
      <p>{way === null ? 'Choose how to send it.' : 'Did you send it? The app cannot tell.'}</p>
      <div className="row">
        {way !== null && (
          <Button variant="main" pending={pending} onClick={sent}>
            Sent
          </Button>
        )}
        <Button pending={pending} onClick={notSent}>
          {way === null ? 'Back' : 'Not sent'}
        </Button>
      </div>
      {refusal && <RefusalNotice refusal={refusal} title="Not done" ref={refusalRef} />}
    </div>
  )
}
