'use client'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { NotFetched, useLazyModule } from '@/app/_components/ui/use-lazy-module'
import type { WritingProps, WritingView } from './written'

const loadForm = () => import('./write-message')

type Props = {
  view: WritingView
  /** The finding that is asked about; left out: any text. */
  findingId?: string
}

/** The button, and under it the text to choose, change and send. */
export function WriteToCustomer({ view, findingId = '' }: Props) {
  const { load, pending, failed } = useLazyModule(loadForm)
  const [Form, setForm] = useState<((props: WritingProps) => React.ReactNode) | null>(null)
  if (Form) return <Form view={view} findingId={findingId} onDone={() => setForm(null)} />
  return (
    <div className="stack">
      <div>
        <Button pending={pending} onClick={() => load((module) => setForm(() => module.WriteMessage))}>
          Write to the customer
        </Button>
      </div>
      {failed && <NotFetched />}
    </div>
  )
}
