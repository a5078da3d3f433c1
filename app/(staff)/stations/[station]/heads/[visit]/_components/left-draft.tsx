'use client'
import { useEffect, useState } from 'react'
import { loadDraft } from '@/app/_components/form/draft-store'
import { readingSpecs } from '@/lib/core/readings/specs'
import { pointLabel } from '@/lib/core/readings/points'
import type { StepKey } from '@/lib/core/route/step-ids'
import { typedReadings } from './answers'
import { stepDraft, type StepDraft } from './step-draft'
import { stepDraftKey } from './use-step-entry'

/** What was typed at the step and not saved. It stays on this device, and comes back with the step. */
export function LeftDraft({ visitId, step }: { visitId: string; step: StepKey }) {
  const [draft, setDraft] = useState<StepDraft | null>(null)
  const key = stepDraftKey({ visitId, step })
  useEffect(() => void loadDraft(key, stepDraft).then(setDraft), [key])
  const typed = draft ? typedReadings(draft.answers) : []
  if (typed.length === 0) return null
  return (
    <section className="stack" aria-label="Typed here">
      <h2>Typed here, not saved</h2>
      <ul>
        {typed.map(({ kind, point, text, notTaken }) => (
          <li key={`${kind} ${point}`}>
            {[readingSpecs[kind].label, pointLabel(point)].filter(Boolean).join(', ')}:{' '}
            {notTaken === null ? text : `not taken, ${notTaken}`}
          </li>
        ))}
      </ul>
      <p className="soft">It stays on this device and comes back when the step is on the route again.</p>
    </section>
  )
}
