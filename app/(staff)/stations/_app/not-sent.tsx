'use client'
import { useHere, useKept, useOutbox } from './here'
import { Trouble, type TroubleProps } from './trouble'

/** Whether the server answers, and what was done here and did not reach it. Nothing where all is well. */
export function NotSent(props: TroubleProps) {
  const { outbox } = useHere()
  const sent = useOutbox()
  const kept = useKept()
  // What is on its way for the first time is no trouble yet.
  const isLeft = sent.unsent.length + sent.aside.length > 0
  const isWell = !sent.away && !sent.signedOut && !kept.away && !kept.signedOut && outbox.keeps && !isLeft
  return isWell ? null : <Trouble {...props} />
}
