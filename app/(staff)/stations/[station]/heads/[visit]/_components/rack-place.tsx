'use client'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { NotFetched, useLazyModule } from '@/app/_components/ui/use-lazy-module'
import { useOutbox } from '../../../../_app/here'
import { withKeptOfHead } from '../../../../_app/kept-of-head'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'

const loadForm = () => import('./rack-form')
type Form = Awaited<ReturnType<typeof loadForm>>['RackForm']

/** Where the head lies, and the way to say that it lies elsewhere. */
export function RackPlace({ screen: told }: { screen: StepScreen }) {
  const { unsent } = useOutbox()
  const screen = withKeptOfHead(told, unsent)
  const { load, pending, failed } = useLazyModule(loadForm)
  const [form, setForm] = useState<{ Form: Form } | null>(null)
  const close = () => setForm(null)
  return (
    <div className="row spread">
      <span>
        Rack location: <strong>{screen.rackPlace || 'not entered'}</strong>
      </span>
      <Button pending={pending} onClick={() => load(({ RackForm }) => setForm({ Form: RackForm }))}>
        {screen.rackPlace === '' ? 'Enter rack location' : 'Change rack location'}
      </Button>
      {failed && <NotFetched />}
      <Dialog open={form !== null} onClose={close} title={`Rack location of ${screen.tag}`}>
        {form && <form.Form screen={screen} onDone={close} />}
      </Dialog>
    </div>
  )
}
