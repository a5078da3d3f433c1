'use client'
import { useEffect, useState } from 'react'
import { clearDraft, loadDraft, saveDraft } from '@/app/_components/form/draft-store'
import type { StepKey } from '@/lib/core/route/step-ids'
import { stepDraft, type StepDraft } from './step-draft'

type Entry = Omit<StepDraft, 'shape'>

export const stepDraftKey = ({ visitId, step }: { visitId: string; step: StepKey }, repeat?: number): string =>
  `step ${visitId} ${step.stepId} ${step.occurrence} ${step.orderId ?? ''} ${repeat ?? ''}`

/** What is typed at a step, kept on this device until the server has taken it. */
export function useStepEntry(key: string, lastConditions: Entry['conditions']) {
  const blank = (conditions: Entry['conditions']): Entry => ({ answers: {}, conditions, instruments: {} })
  const [entry, setEntry] = useState<Entry>(() => blank(lastConditions))

  useEffect(() => {
    let left = false
    void loadDraft(key, stepDraft).then((draft) => {
      // What was typed before the draft came counts.
      if (draft && !left) setEntry((now) => ({ ...draft, answers: { ...draft.answers, ...now.answers } }))
    })
    return () => {
      left = true
    }
  }, [key])

  return {
    entry,
    change(part: Partial<Entry>) {
      const next = { ...entry, ...part }
      setEntry(next)
      saveDraft<StepDraft>(key, { shape: 1, ...next })
    },
    /** The conditions stay for the next run. */
    clear(conditions: Entry['conditions'] = entry.conditions) {
      clearDraft(key)
      setEntry(blank(conditions))
    },
  }
}
