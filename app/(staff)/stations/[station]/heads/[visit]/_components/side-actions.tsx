'use client'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { NotFetched, useLazyModule } from '@/app/_components/ui/use-lazy-module'
import type { StepKey } from '@/lib/core/route/step-ids'

type Props = { visitId: string; head: string; step: StepKey }

/** The forms are no part of the page's first load: the step itself has to be there at once. */
const loadForms = () => import('./side-forms')
type Forms = Awaited<ReturnType<typeof loadForms>>

const labels = {
  FindingForm: 'Finding',
  WaitForm: 'Parts',
  HoldForm: 'Hold',
} as const satisfies Record<keyof Forms, string>

const titles = {
  FindingForm: 'Report a finding',
  WaitForm: 'Waits for parts',
  HoldForm: 'Hold this head',
} as const satisfies Record<keyof Forms, string>

const told = {
  FindingForm: 'Finding reported.',
  WaitForm: 'The step waits for parts.',
  HoldForm: 'The head is on hold.',
} as const satisfies Record<keyof Forms, string>

/** Always one tap away: something was found, something is wrong, something is missing. */
export function SideActions({ visitId, head, step }: Props) {
  const [open, setOpen] = useState<{ name: keyof Forms; forms: Forms } | null>(null)
  const [sent, setSent] = useState<keyof Forms | null>(null)
  const close = () => setOpen(null)

  function done() {
    setSent(open?.name ?? null)
    close()
  }
  const Form = open?.forms[open.name]
  return (
    <>
      {(['FindingForm', 'WaitForm', 'HoldForm'] as const).map((name) => (
        <Opener
          key={name}
          name={name}
          onOpen={(forms) => {
            setSent(null)
            setOpen({ name, forms })
          }}
        />
      ))}
      {/* Seen, it stands among the notices of the step. */}
      <span role="status" className="visually-hidden">
        {sent && told[sent]}
      </span>
      <Dialog open={open !== null} onClose={close} title={open ? titles[open.name] : ''}>
        {Form && <Form visitId={visitId} head={head} step={step} onDone={done} />}
      </Dialog>
    </>
  )
}

function Opener({ name, onOpen }: { name: keyof Forms; onOpen: (forms: Forms) => void }) {
  const { load, pending, failed } = useLazyModule(loadForms)
  return (
    <>
      <Button variant={name === 'HoldForm' ? 'stop' : 'plain'} pending={pending} onClick={() => load(onOpen)}>
        {labels[name]}
      </Button>
      {failed && <NotFetched />}
    </>
  )
}
