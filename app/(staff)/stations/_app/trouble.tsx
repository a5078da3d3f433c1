'use client'
import dynamic from 'next/dynamic'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import Link from 'next/link'
import type { KeptDeed } from '@/app/_components/outbox/kept'
import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import { useHere, useKept, useOutbox } from './here'

const KeepsNothing = dynamic(() => import('./keeps-nothing').then((file) => file.KeepsNothing), { loading: nothingYet })
/** Seen only where something was not taken. */
const SetAside = dynamic(() => import('./set-aside').then((file) => file.SetAside), { loading: nothingYet })

export type TroubleProps = {
  /** When what is shown was so, ISO 8601; '' where nothing is. */
  asOf: string
  locale: string
  timeZone: string
}

/** Whether the server answers, and what was done here and did not reach it yet. */
export function Trouble({ asOf, locale, timeZone }: TroubleProps) {
  const { person, outbox } = useHere()
  const state = useOutbox()
  const kept = useKept()
  const isOwn = ({ personId }: KeptDeed) => personId === person.id
  const waiting = state.unsent.filter(isOwn)
  const aside = state.aside.filter(isOwn)
  const others = state.unsent.length - waiting.length
  const away = state.away || kept.away
  const late = away && waiting.length > 0
  return (
    <>
      {(away || late) && (
        <Notice kind="caution" title={late ? `Kept here, not yet sent: ${waiting.length}` : 'No connection'}>
          <p>
            The shop’s server does not answer. You can go on: what you do is kept on this device and sent when it is
            back.
            {asOf !== '' && (
              <>
                {' '}
                Shown as of <When at={asOf} zone={timeZone} locale={locale} />.
              </>
            )}
          </p>
          {waiting.length > 0 && (
            <ul className="plain-list">
              {waiting.map(({ seq, words }) => (
                <li key={seq}>{words}</li>
              ))}
            </ul>
          )}
        </Notice>
      )}
      {(state.signedOut || kept.signedOut) && (
        <Notice kind="caution" title="You are signed out">
          <p>
            Nothing is lost{waiting.length > 0 && `: ${waiting.length} not yet sent`}.{' '}
            <Link href={`/sign-in?next=${encodeURIComponent(hereAddress())}`}>Sign in</Link> to go on.
          </p>
        </Notice>
      )}
      {!outbox.keeps && <KeepsNothing />}
      {others > 0 && (
        <p className="soft">Not yet sent by others on this device: {others}. It is sent when they sign in here.</p>
      )}
      {aside.length > 0 && <SetAside deeds={aside} locale={locale} timeZone={timeZone} />}
    </>
  )
}

const hereAddress = (): string => window.location.pathname + window.location.search
