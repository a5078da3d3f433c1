'use client'
import { useState } from 'react'
import { useWatch } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { countedFromOtherEdge } from '@/lib/core/casting/recount'
import type { CastingForm, CastingValues } from './form-values'

/** Another edge is the deep one now: every place counts from the other edge, and one tap counts them anew. */
export function Recount({ form }: { form: CastingForm }) {
  const { control, formState, getValues, setValue } = form.form
  const deepEdge = useWatch({ control, name: 'deepEdge' })
  const [countedFor, setCountedFor] = useState(formState.defaultValues?.deepEdge ?? deepEdge)
  const [said, setSaid] = useState('')
  const isKept = (getValues('castingId') ?? '') !== ''
  if (!isKept || (deepEdge === countedFor && said === '')) return null

  function count() {
    const { figures, outlines, bolts } = getValues()
    const typed = { figures, outlines: outlines ?? {}, bolts: (bolts ?? []).map(({ xIn }) => xIn ?? '') }
    const found = countedFromOtherEdge(typed, figures.any?.milledWidthIn ?? '')
    if (!found.ok) return setSaid(found.refusal.message)
    const { unread } = found.value
    setValue('figures', found.value.figures as CastingValues['figures'], { shouldDirty: true })
    setValue('outlines', found.value.outlines as CastingValues['outlines'], { shouldDirty: true })
    found.value.bolts.forEach((xIn, at) => setValue(`bolts.${at}.xIn`, xIn, { shouldDirty: true }))
    setCountedFor(deepEdge)
    const left = unread.length === 0 ? '' : ` Enter these yourself: ${unread.join(', ')}.`
    setSaid(`Counted from the other edge, valve angles turned. Look them over before you save.${left}`)
  }

  return (
    <div className="stack" role="group" aria-label="Places across the head">
      {deepEdge !== countedFor && (
        <>
          <p>Places across the head are still counted from the edge that was shallow before.</p>
          <div>
            <Button onClick={count}>Count them from the other edge</Button>
          </div>
        </>
      )}
      <p role="status">{said}</p>
    </div>
  )
}
