'use client'
import { useEffect, useId, useRef } from 'react'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import type { Refusal } from '@/lib/core/errors'
import { effectOf } from './effect-of'
import type { AskedQuestion } from './asked-question'
import styles from './question.module.css'

type Props = {
  answer: 'yes' | 'no'
  question: AskedQuestion
  name: string
  pending: boolean
  refusal: Refusal | null
  onSend: () => void
  onBack: () => void
}

/** The choice in words, in the place where it was made; nothing was sent so far. */
export function Confirm({ answer, question, name, pending, refusal, onSend, onBack }: Props) {
  const id = useId()
  const title = useRef<HTMLHeadingElement>(null)
  const box = useRef<HTMLDivElement>(null)
  // Both buttons are to be seen with the words, also on a small phone.
  useEffect(() => {
    title.current?.focus()
    box.current?.scrollIntoView({ block: 'nearest' })
  }, [])
  return (
    <div ref={box} role="group" aria-labelledby={id} className={`stack ${styles.confirm}`}>
      <h4 id={id} ref={title} tabIndex={-1}>
        Your answer is {answer === 'yes' ? 'yes' : 'no'}. Send it?
      </h4>
      <p>{effectOf(answer, question)}</p>
      <p>Answered by {name}. It cannot be changed here afterwards.</p>
      {refusal && (
        <Notice kind="stop" title="Not sent">
          <p>{refusal.message}</p>
        </Notice>
      )}
      <div className={styles.choices}>
        <Button variant="main" className={styles.choice} pending={pending} onClick={onSend}>
          Send my {answer}
        </Button>
        <Button className={styles.choice} onClick={onBack} disabled={pending}>
          Go back
        </Button>
      </div>
      <Busy when={pending} label="Sending…" />
    </div>
  )
}
