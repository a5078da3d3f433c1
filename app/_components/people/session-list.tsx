'use client'
import { RefusalOrAsk } from '@/app/_components/form/refusal-or-ask'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import { When } from '@/app/_components/ui/when'
import type { SessionSeen } from '@/lib/use-cases/people/see-sessions'
import { endASessionAction } from './end-a-session-action'

type Props = { sessions: readonly SessionSeen[]; zone: string; locale: string }

/** Where somebody is signed in, newest first, each with its end. */
export function SessionList({ sessions, zone, locale }: Props) {
  if (sessions.length === 0) return <p>Nowhere.</p>
  return (
    <ul className="plain-list stack">
      {sessions.map((session) => (
        <li key={session.id} className="row">
          <Opened session={session} zone={zone} locale={locale} />
          {session.here ? <strong>This one</strong> : <EndButton session={session} />}
        </li>
      ))}
    </ul>
  )
}

const nameOf = ({ tablet, browser }: SessionSeen): string => tablet ?? (browser === '' ? 'A browser' : browser)

function Opened({ session, zone, locale }: { session: SessionSeen; zone: string; locale: string }) {
  const { address, openedAt, lastSeenAt } = session
  return (
    <span>
      {nameOf(session)}
      {address !== '' && ` at ${address}`}, signed in <When at={openedAt} zone={zone} locale={locale} />, last seen{' '}
      <When at={lastSeenAt} zone={zone} locale={locale} />
    </span>
  )
}

function EndButton({ session }: { session: SessionSeen }) {
  const { run, pending, refusal, refusalRef } = useAction()
  const end = () => run({ action: endASessionAction, input: { sessionId: session.id } })
  return (
    <>
      <Button pending={pending} onClick={end} aria-label={`End the session: ${nameOf(session)}`}>
        End
      </Button>
      {refusal && <RefusalOrAsk refusal={refusal} title="Not ended" ref={refusalRef} onAgain={end} />}
    </>
  )
}
