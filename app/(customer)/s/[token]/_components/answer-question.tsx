'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState, useTransition } from 'react'
import { TakenOver } from '@/app/_components/form/taken-over'
import { useAction } from '@/app/_components/form/use-action'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import type { Refusal } from '@/lib/core/errors'
import { answerByLinkAction } from '../actions'
import { Confirm } from './confirm'
import type { AskedQuestion } from './asked-question'
import styles from './question.module.css'

type Props = { question: AskedQuestion; token: string; call: string; onSent: () => void }

export const words = { yes: 'Yes, do it', no: 'No, leave it' } as const

/**
 * A name, yes or no, and once more what was chosen before it goes out. The name is read from its field: on a slow phone it
 * is typed before the page's script is there.
 */
export function AnswerQuestion({ question, token, call, onSent }: Props) {
  const name = useRef<HTMLInputElement>(null)
  const [answeredBy, setAnsweredBy] = useState('')
  const [nameless, setNameless] = useState(false)
  const [chosen, setChosen] = useState<'yes' | 'no' | null>(null)
  const { run, pending, refusal, clear } = useAction()

  function choose(answer: 'yes' | 'no') {
    clear()
    const typed = name.current?.value.trim() ?? ''
    setAnsweredBy(typed)
    setNameless(typed === '')
    if (typed === '') name.current?.focus()
    else setChosen(answer)
  }

  if (refusal?.readsNow !== undefined) return <Changed question={question} refusal={refusal} call={call} />
  if (chosen !== null) {
    return (
      <Confirm
        answer={chosen}
        question={question}
        name={answeredBy}
        pending={pending}
        refusal={refusal}
        onSend={() =>
          run({
            action: answerByLinkAction,
            input: {
              token,
              findingId: question.id,
              version: question.version,
              answer: chosen,
              answeredBy,
            },
            onDone: onSent,
          })
        }
        onBack={() => {
          clear()
          setChosen(null)
        }}
      />
    )
  }
  return (
    <div className="stack">
      <div className={styles.name}>
        <TextInput
          ref={name}
          label="Your name"
          required
          autoComplete="name"
          maxLength={120}
          defaultValue={answeredBy}
          error={nameless ? 'Write your name first, then choose.' : undefined}
          onChange={() => setNameless(false)}
        />
      </div>
      <TakenOver>
        <div className={styles.choices}>
          {(['yes', 'no'] as const).map((answer) => (
            <Button key={answer} className={styles.choice} onClick={() => choose(answer)}>
              {words[answer]}
            </Button>
          ))}
        </div>
      </TakenOver>
      <p className="soft">Nothing is sent yet: you will be asked once more. Not sure? Call us: {call}.</p>
    </div>
  )
}

type ChangedProps = { question: AskedQuestion; refusal: Refusal; call: string }

/** Somebody was first, or the shop asks otherwise by now: both sides, and the way to what stands. */
function Changed({ question, refusal, call }: ChangedProps) {
  const router = useRouter()
  const notice = useRef<HTMLDivElement>(null)
  const [pending, start] = useTransition()
  useEffect(() => notice.current?.focus(), [])
  return (
    <Notice kind="caution" title="Not sent" ref={notice}>
      <p>{refusal.message}</p>
      <dl className={styles.effects}>
        <div>
          <dt>What you read</dt>
          <dd>{question.terms}</dd>
        </div>
        <div>
          <dt>What it says now</dt>
          <dd>{refusal.readsNow}</dd>
        </div>
      </dl>
      <div>
        <Button pending={pending} onClick={() => start(() => router.refresh())}>
          Show it as it is now
        </Button>
      </div>
      <Busy when={pending} label="Loading…" />
      <p className="soft">Questions? Call us: {call}.</p>
    </Notice>
  )
}
