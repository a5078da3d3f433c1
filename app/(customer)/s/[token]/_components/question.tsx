'use client'
import { useEffect, useId, useRef, useState } from 'react'
import { Tag } from '@/app/_components/tag/tag'
import { AnswerQuestion } from './answer-question'
import type { AskedQuestion } from './asked-question'
import { effectOf } from './effect-of'
import styles from './question.module.css'

type Props = { question: AskedQuestion; token: string; call: string }

/** One thing that was found: what, the price, what yes and no would do, and the answer. */
export function Question({ question, token, call }: Props) {
  const id = useId()
  const { answered, price, tax } = question
  return (
    <article className={`stack ${styles.question}`} aria-labelledby={id}>
      <div className="row">
        <Tag number={question.tag} size="s" />
        <h3 id={id}>{question.what}</h3>
      </div>
      {question.photos.map((photo) => (
        <figure key={photo.id} className={styles.photo}>
          <img
            src={`/s/${token}/photos/${photo.id}`}
            alt={photo.caption === '' ? 'Photo of what we found' : photo.caption}
            width={photo.widthPx}
            height={photo.heightPx}
          />
          {photo.caption !== '' && <figcaption>{photo.caption}</figcaption>}
        </figure>
      ))}
      {price !== null && (
        <p>
          <span className="figure">{price}</span>
          {tax !== '' && <span className="soft"> of which {tax} is tax</span>}
        </p>
      )}
      {answered === null && (
        <dl className={styles.effects}>
          <div>
            <dt>If you say yes</dt>
            <dd>{effectOf('yes', question)}</dd>
          </div>
          <div>
            <dt>If you say no</dt>
            <dd>{effectOf('no', question)}</dd>
          </div>
        </dl>
      )}
      <Answer question={question} token={token} call={call} />
    </article>
  )
}

function Answer({ question, token, call }: Props) {
  const { answered } = question
  const [sent, setSent] = useState(false)
  const said = useRef<HTMLParagraphElement>(null)
  useEffect(() => {
    if (sent && answered) said.current?.focus()
  }, [sent, answered])
  if (answered) {
    return (
      <p ref={said} tabIndex={-1} className={styles.said}>
        <strong>
          You said {answered.answer} on {answered.on}
        </strong>
        {answered.by !== '' && ` (${answered.by})`}.{sent && ' Thank you. We have your answer.'}
      </p>
    )
  }
  if (question.price === null) {
    return <p>We do not know the price yet. We will tell you before you decide. To ask, call us: {call}.</p>
  }
  return (
    <AnswerQuestion key={question.version} question={question} token={token} call={call} onSent={() => setSent(true)} />
  )
}
