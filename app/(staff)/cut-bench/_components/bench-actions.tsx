'use client'
import { useState } from 'react'
import type { Chosen } from '@/app/_components/bench/bench-answer'
import { Button } from '@/app/_components/ui/button'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { NotFetched, useLazyModule } from '@/app/_components/ui/use-lazy-module'
import type { BenchForm } from '@/lib/schemas/bench-question'
import type { BenchView } from '@/lib/use-cases/cut-bench/see-bench'

const loadForm = () => import('./keep-form')

type Props = { chosen: Chosen; typed: BenchForm; query: string; view: Pick<BenchView, 'forWhom' | 'mayBook'> }

/** What becomes of an answer: kept and printed, booked, or handed to a colleague. */
export function BenchActions({ chosen, typed, query, view }: Props) {
  const { load, pending, failed } = useLazyModule(loadForm)
  const [forms, setForms] = useState<Awaited<ReturnType<typeof loadForm>> | null>(null)
  const book = new URLSearchParams(query)
  book.set('way', chosen.way.id)
  if (chosen.angleIn !== null) book.set('angle', String(chosen.angleIn))
  return (
    <section aria-label="Next" className="part">
      <div className="row">
        <Button pending={pending} onClick={() => load(setForms)} disabled={chosen.way.ruledOut !== ''}>
          Save as estimate
        </Button>
        {view.mayBook && <ButtonLink href={`/counter/book?${book}`}>Book a job from it</ButtonLink>}
        <CopyLink />
      </div>
      {failed && <NotFetched />}
      {forms && <forms.KeepForm chosen={chosen} typed={typed} forWhom={view.forWhom?.name ?? ''} />}
    </section>
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
