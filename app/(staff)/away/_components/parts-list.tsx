'use client'
import { Link } from '@/app/_components/ui/link'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Tag } from '@/app/_components/tag/tag'
import { Button } from '@/app/_components/ui/button'
import { Day } from '@/app/_components/ui/day'
import { daysText } from '@/lib/core/shop/when-words'
import type { PartsLine } from '@/lib/use-cases/outside/see-away'
import { endWaitAction } from '../actions'

/** Steps that wait for parts, and the way to say that they are here. */
export function PartsList({ lines, locale }: { lines: readonly PartsLine[]; locale: string }) {
  const { run, pending, refusal, refusalRef } = useAction()
  const arrived = ({ waitId, version }: PartsLine) => run({ action: endWaitAction, input: { waitId, version } })

  return (
    <section className="stack part" aria-label="Waiting for parts">
      <h2>Waiting for parts</h2>
      {refusal && <RefusalNotice refusal={refusal} title="Not done" ref={refusalRef} />}
      {lines.length === 0 ? (
        <p className="soft">No head is waiting for parts.</p>
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
                  {line.late && ', late'} <span className="soft">waiting {daysText(line.days)}</span>
                </span>
              </span>
              {line.supply ? (
                <Link href={`/away/supply/${line.supply.orderId}`}>on {line.supply.number}</Link>
              ) : (
                <Button pending={pending} onClick={() => arrived(line)}>
                  Receive
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
