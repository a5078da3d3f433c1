'use client'
import { useEffect, useState } from 'react'
import type { ProposePromiseForm } from '@/lib/schemas/promise'
import type { ProposedPromise as Proposed } from '@/lib/use-cases/jobs/propose-promise'
import { Button } from '../ui/button'
import { Day } from '../ui/day'

const pauseMs = 300

type Props = {
  /** What the day hangs on. */
  asked: ProposePromiseForm
  locale: string
  /** The day that stands in the field; '' when it is empty. */
  value: string
  onUse: (day: string) => void
}

/** The day that this work may be promised for, from the shop's own record and queues, to be taken over by a tap. */
export function ProposedPromise({ asked, locale, value, onUse }: Props) {
  const query = new URLSearchParams(asked).toString()
  const [answer, setAnswer] = useState<{ query: string; proposed: Proposed } | null>(null)

  useEffect(() => {
    const asking = new AbortController()
    const timer = setTimeout(async () => {
      const proposed = await ask(query, asking.signal)
      if (proposed && !asking.signal.aborted) setAnswer({ query, proposed })
    }, pauseMs)
    return () => {
      clearTimeout(timer)
      asking.abort()
    }
  }, [query])

  if (!answer) return null
  const { promiseOn, middleOn, why, from } = answer.proposed
  return (
    <div className="row" role="status">
      <span>
        Expected about <Day on={middleOn} locale={locale} />, 9 of 10 by <Day on={promiseOn} locale={locale} />
        <span className="soft">
          , {from}
          {why !== '' && `; longest: ${why}`}
        </span>
      </span>
      {value === '' || value < promiseOn ? (
        <Button onClick={() => onUse(promiseOn)}>
          Promise <Day on={promiseOn} locale={locale} />
        </Button>
      ) : null}
      {value !== '' && value < promiseOn && <strong>At risk from the first day.</strong>}
    </div>
  )
}

/** No answer (no network, signed out) proposes nothing: the day is typed as before. */
async function ask(query: string, signal: AbortSignal): Promise<Proposed | null> {
  const answer = await fetch(`/api/promise?${query}`, { signal, cache: 'no-store' }).catch(() => null)
  return answer?.ok ? ((await answer.json()) as Proposed) : null
}
