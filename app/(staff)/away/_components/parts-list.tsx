'use client'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { useRef, useState, useTransition } from 'react'
import { OperationIds } from '@/app/_components/form/operation-ids'
import { callAction } from '@/app/_components/form/call-action'
import { Tag } from '@/app/_components/tag/tag'
import { Button } from '@/app/_components/ui/button'
import { Day } from '@/app/_components/ui/day'
import { Notice } from '@/app/_components/ui/notice'
import type { PartsLine } from '@/lib/use-cases/outside/see-away'
import { endWaitAction } from '../actions'

/** Steps that wait for parts, and the way to say that they are here. */
export function PartsList({ lines, locale }: { lines: readonly PartsLine[]; locale: string }) {
  const router = useRouter()
  const [said, setSaid] = useState('')
  const [pending, start] = useTransition()
  const attempts = useRef(new OperationIds())

  function arrived(line: PartsLine) {
    const input = { waitId: line.waitId, version: line.version }
    start(async () => {
      const answer = await callAction(endWaitAction, { op: attempts.current.idFor(input), input })
      if (!answer.answered) return setSaid(answer.refusal.message)
      attempts.current.answered()
      setSaid(answer.result.ok ? '' : answer.result.refusal.message)
      router.refresh()
    })
  }

  return (
    <section className="stack part" aria-label="Waiting for parts">
      <h2>Waiting for parts</h2>
      {said !== '' && <Notice kind="stop">{said}</Notice>}
      {lines.length === 0 ? (
        <p className="soft">Nothing waits for parts.</p>
      ) : (
        <ul className="plain-list">
          {lines.map((line) => (
            <li key={line.waitId} className="row spread">
              <span className="row">
                <Tag number={line.head.tag} size="s" href={`/heads/${line.head.headId}`} />
                <span>
                  {line.what}
                  {line.fromWhom !== '' && `, from ${line.fromWhom}`}
                  {line.promisedOn !== null && (
                    <>
                      , promised <Day on={line.promisedOn} locale={locale} />
                    </>
                  )}
                  {line.late && ', late'}{' '}
                  <span className="soft">
                    waits {line.days} {line.days === 1 ? 'day' : 'days'}
                  </span>
                </span>
              </span>
              {line.supply ? (
                <Link href={`/away/supply/${line.supply.orderId}`}>on {line.supply.number}</Link>
              ) : (
                <Button pending={pending} onClick={() => arrived(line)}>
                  They are here
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
