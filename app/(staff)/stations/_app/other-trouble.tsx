'use client'
import { Link } from '@/app/_components/ui/link'
import type { KeptDeed } from '@/app/_components/outbox/kept'
import { Notice } from '@/app/_components/ui/notice'
import { KeepsNothing } from './keeps-nothing'
import { SetAside } from './set-aside'

type Props = {
  /** Deeds not yet sent of whoever is signed out; null: nobody is. */
  waiting: number | null
  keeps: boolean
  others: number
  aside: readonly KeptDeed[]
  locale: string
  timeZone: string
}

export function OtherTrouble({ waiting, keeps, others, aside, locale, timeZone }: Props) {
  return (
    <>
      {waiting !== null && (
        <Notice kind="caution" title="You are signed out">
          <p>
            Nothing is lost{waiting > 0 && `: ${waiting} not yet sent`}.{' '}
            <Link href={`/sign-in?next=${encodeURIComponent(hereAddress())}`}>Sign in</Link> to go on.
          </p>
        </Notice>
      )}
      {!keeps && <KeepsNothing />}
      {others > 0 && (
        <p className="soft">Not yet sent by others on this device: {others}. It is sent when they sign in here.</p>
      )}
      {aside.length > 0 && <SetAside deeds={aside} locale={locale} timeZone={timeZone} />}
    </>
  )
}

const hereAddress = (): string => window.location.pathname + window.location.search
