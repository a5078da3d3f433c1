'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import type { KeptDeed } from '@/app/_components/outbox/kept'
import { Notice } from '@/app/_components/ui/notice'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import { When } from '@/app/_components/ui/when'
import { useHere, useKept, useOutbox } from './here'

/** What is said when the server answers, but not as it should; without it nothing of this can come to pass. */
const OtherTrouble = dynamic(() => untilHere(() => import('./other-trouble').then((file) => file.OtherTrouble)), {
  loading: nothingYet,
})

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
  const signedOut = state.signedOut || kept.signedOut
  return (
    <>
      {away && (
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
          {late && (
            <details>
              <summary>What is kept</summary>
              <ul className="plain-list">
                {waiting.map(({ seq, words }) => (
                  <li key={seq}>{words}</li>
                ))}
              </ul>
            </details>
          )}
        </Notice>
      )}
      {(signedOut || !outbox.keeps || others + aside.length > 0) && (
        <OtherTrouble
          waiting={signedOut ? waiting.length : null}
          keeps={outbox.keeps}
          others={others}
          aside={aside}
          locale={locale}
          timeZone={timeZone}
        />
      )}
    </>
  )
}
