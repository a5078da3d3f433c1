'use client'
import { useHere, useKept, useOutbox } from './here'
import { Trouble } from './later'

export type TroubleProps = {
  /** When what is shown was so, ISO 8601; '' where nothing is. */
  asOf: string
  locale: string
  timeZone: string
}

/** Whether the server answers, and what was done here and did not reach it. Nothing where all is well. */
export function NotSent(props: TroubleProps) {
  const { outbox } = useHere()
  const sent = useOutbox()
  const kept = useKept()
  const isLeft = sent.deeds.length > 0 && (!sent.sending || sent.away)
  const isWell = !sent.away && !sent.signedOut && !kept.away && !kept.signedOut && outbox.keeps && !isLeft
  return isWell ? null : <Trouble {...props} />
}
