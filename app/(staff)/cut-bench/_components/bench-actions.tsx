'use client'
import { useEffect, useState } from 'react'
import type { Chosen } from '@/app/_components/bench/bench-answer'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { TextInput } from '@/app/_components/ui/text-input'
import { keepEstimateSchema, type BenchForm } from '@/lib/schemas/bench'
import type { BenchView } from '@/lib/use-cases/cut-bench/see-bench'
import { keepEstimateAction } from '../actions'

type Props = { chosen: Chosen; typed: BenchForm; query: string; view: Pick<BenchView, 'forWhom' | 'mayBook'> }

/** What becomes of an answer: kept and printed, booked, or handed to a colleague. */
export function BenchActions({ chosen, typed, query, view }: Props) {
  const [keeping, setKeeping] = useState(false)
  const book = new URLSearchParams(query)
  book.set('way', chosen.way.id)
  if (chosen.angleIn !== null) book.set('angle', String(chosen.angleIn))
  return (
    <section aria-label="Next" className="part">
      <div className="row">
        <Button onClick={() => setKeeping(true)} disabled={chosen.way.ruledOut !== ''}>
          Save as estimate
        </Button>
        {view.mayBook && <ButtonLink href={`/counter/book?${book}`}>Book a job from it</ButtonLink>}
        <CopyLink />
      </div>
      {keeping && <KeepForm chosen={chosen} typed={typed} forWhom={view.forWhom?.name ?? ''} />}
    </section>
  )
}

function KeepForm({ chosen, typed, forWhom }: Pick<Props, 'chosen' | 'typed'> & { forWhom: string }) {
  const form = useActionForm(keepEstimateSchema, keepEstimateAction, {
    defaultValues: { question: typed, wayId: chosen.way.id, angleIn: chosen.angleIn, forWhom, note: '' },
  })
  // What is sent is what is on the screen now, not what was when the form opened.
  const { setValue } = form.form
  useEffect(() => {
    setValue('question', typed)
    setValue('angleIn', chosen.angleIn)
  }, [setValue, typed, chosen.angleIn])
  return (
    <ActionForm form={form} submitLabel="Save answer">
      <TextInput label="Customer" required {...form.text('forWhom')} />
      <TextInput label="Note" {...form.text('note')} />
    </ActionForm>
  )
}

/** The address of the page is the question: whoever has it and works here sees the same answer. */
function CopyLink() {
  const [said, setSaid] = useState('')
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(window.location.href)
      setSaid('Copied. Anyone who works here can open it.')
    } catch {
      setSaid('This device does not allow copying. Copy the address of the page instead.')
    }
  }
  return (
    <>
      <Button variant="quiet" onClick={copy}>
        Copy a link to this answer
      </Button>
      <span role="status">{said}</span>
    </>
  )
}
