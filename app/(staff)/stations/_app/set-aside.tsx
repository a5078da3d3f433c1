'use client'
import type { KeptDeed } from '@/app/_components/outbox/kept'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import { readingSpecs } from '@/lib/core/readings/specs'
import { pointLabel } from '@/lib/core/readings/points'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import { theirsAtText } from '@/lib/words/conflicts'
import { useHere } from './here'

type Props = { deeds: readonly KeptDeed[]; locale: string; timeZone: string }

/** What was done here and not taken: both sides, until its person has looked. */
export function SetAside({ deeds, locale, timeZone }: Props) {
  const { outbox } = useHere()
  return (
    <Notice kind="stop" title={`Not taken: ${deeds.length}`}>
      <ul className="plain-list">
        {deeds.map((deed) => (
          <li key={deed.seq} className="stack">
            <p>
              <strong>{deed.words}</strong>, <When at={deed.takenAt} zone={timeZone} locale={locale} />.{' '}
              {deed.refusal?.theirs
                ? `${theirsAtText(deed.refusal.theirs, { locale, timeZone })}.`
                : deed.refusal?.message}
            </p>
            <Typed deed={deed} />
            <div>
              <Button onClick={() => void outbox.drop(deed.seq)}>I have seen it: remove it here</Button>
            </div>
          </li>
        ))}
      </ul>
    </Notice>
  )
}

type Reading = {
  readonly kind: ReadingKind
  readonly point: string
  readonly text: string
  readonly notTaken: string | null
}

/** The figures and words that are in it and nowhere else. */
function Typed({ deed: { input } }: { deed: KeptDeed }) {
  const { entry, what, reason } = input as {
    readonly entry?: { readonly readings: readonly Reading[] } | null
    readonly what?: string
    readonly reason?: string
    readonly step?: StepKey
  }
  const words = [what, reason].filter(Boolean).join(' ')
  return (
    <>
      {words !== '' && <p>{words}</p>}
      {entry && entry.readings.length > 0 && (
        <p>
          Typed here:{' '}
          {entry.readings
            .map(({ kind, point, text, notTaken }) => {
              const label = [readingSpecs[kind].label, pointLabel(point)].filter(Boolean).join(', ')
              return `${label}: ${notTaken === null ? text : `not taken, ${notTaken}`}`
            })
            .join('; ')}
        </p>
      )}
    </>
  )
}
