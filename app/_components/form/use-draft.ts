'use client'
import { useEffect, useState } from 'react'
import type { FieldValues } from 'react-hook-form'
import { formDraft, type FormDraft } from './draft-shapes'
import { clearDraft, saveDraft, loadDraft } from './draft-store'
import type { ActionForm } from './use-action-form'

export type Draft = { restored: boolean; discard: () => void }

/**
 * Keeps what is typed on this device until the server has taken it, and puts it back after a closed tab. Never for a
 * form with a password or PIN in it. Show `<DraftNotice draft={…} />` above the form.
 */
export function useDraft<Values extends FieldValues, Value>(
  key: string,
  { form, ids, whenDone }: ActionForm<Values, Value>,
): Draft {
  const [restored, setRestored] = useState(false)
  const at = `draft ${key}`

  useEffect(() => {
    let left = false
    let stopSaving = () => {}
    const clear = () => {
      stopSaving()
      clearDraft(at)
      setRestored(false)
    }
    // One turn later, so that the fields have registered and take the restored values.
    const timer = setTimeout(async () => {
      ids.current.keepUnder(key)
      const draft = await loadDraft(at, formDraft)
      if (left) return
      if (draft) {
        form.reset({ ...form.getValues(), ...(draft.values as Partial<Values>) }, { keepDefaultValues: true })
        setRestored(true)
      }
      stopSaving = form.subscribe({
        formState: { values: true },
        callback: ({ values }) => saveDraft<FormDraft>(at, { shape: 1, values }),
      })
    })
    const stopListening = whenDone(clear)
    return () => {
      left = true
      clearTimeout(timer)
      stopSaving()
      stopListening()
    }
  }, [at, key, form, ids, whenDone])

  const discard = () => {
    form.reset()
    clearDraft(at)
    setRestored(false)
  }

  return { restored, discard }
}
