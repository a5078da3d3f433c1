'use client'
import dynamic from 'next/dynamic'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import { useHere, useKept, useOutbox } from './here'
import type { TroubleProps } from './trouble'

/** Seen only where the server does not answer, or something was not sent. */
const Trouble = dynamic(() => import('./trouble').then((file) => file.Trouble), { loading: nothingYet })

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
