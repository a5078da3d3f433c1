'use client'
import { useEffect, useState } from 'react'
import { Notice } from '@/app/_components/ui/notice'
import type { MadeCode } from '@/lib/use-cases/tablets/make-tablet-code'
import styles from './code-shown.module.css'

const tickMs = 5000
const minuteMs = 60_000

/** The code, large and this once, with the minutes it has left. */
export function CodeShown({ made, address }: { made: MadeCode; address: string }) {
  const [nowMs, setNowMs] = useState(() => Date.now())
  // The server's end of it against the clock here: how long it lasts is fixed when it comes.
  const [endMs] = useState(() => Math.min(Date.parse(made.endsAt), Date.now() + 10 * minuteMs))
  useEffect(() => {
    const timer = setInterval(() => setNowMs(Date.now()), tickMs)
    return () => clearInterval(timer)
  }, [])
  const minutes = Math.ceil((endMs - nowMs) / minuteMs)
  if (minutes <= 0) {
    return (
      <Notice kind="caution" title="This code is over">
        <p>Make another one.</p>
      </Notice>
    )
  }
  return (
    <section className="part" aria-labelledby="code">
      <h2 id="code">Code for {made.name}</h2>
      <p className={styles.code} role="status">
        {made.code}
      </p>
      <p>{minutes === 1 ? '1 minute left' : `${minutes} minutes left`}. It works once, and is not shown again.</p>
      <ol>
        <li>
          On the tablet, open <strong>{address}</strong>.
        </li>
        <li>Type the code there. The tablet then shows the rack of time cards.</li>
      </ol>
    </section>
  )
}
