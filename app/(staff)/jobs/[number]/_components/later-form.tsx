'use client'
import { useEffect, useRef, useState, type ReactNode } from 'react'
import { Button } from '@/app/_components/ui/button'
import type { ButtonVariant } from '@/app/_components/ui/button-class'
import { Dialog } from '@/app/_components/ui/dialog'
import { Loading } from '@/app/_components/ui/loading'
import { NotFetched, useLazyModule } from '@/app/_components/ui/use-lazy-module'

const loadForms = () => import('./forms')
type Forms = Awaited<ReturnType<typeof loadForms>>

/** What checks and sends forms is most of the page's script: the job stands before it is here. */
function useForms() {
  const { load, pending, failed } = useLazyModule(loadForms)
  const [forms, setForms] = useState<Forms | null>(null)
  return { forms, pending, failed, fetch: () => load(setForms) }
}

type Shown = (forms: Forms, close: () => void) => ReactNode

/** A button, and in its place the form. */
export function FormInPlace({ label, children }: { label: string; children: Shown }) {
  const { forms, pending, failed, fetch } = useForms()
  const [open, setOpen] = useState(false)
  if (open && forms) return children(forms, () => setOpen(false))
  const tap = () => {
    setOpen(true)
    fetch()
  }
  return (
    <div>
      <Button pending={pending} onClick={tap}>
        {label}
      </Button>
      {failed && <NotFetched />}
    </div>
  )
}

type DialogProps = {
  label: ReactNode
  variant?: ButtonVariant
  title: string
  closeLabel: string
  children: Shown
}

/** A button, and the form above the page. */
export function FormInDialog({ label, variant, title, closeLabel, children }: DialogProps) {
  const { forms, pending, failed, fetch } = useForms()
  const [open, setOpen] = useState(false)
  const close = () => setOpen(false)
  const tap = () => {
    setOpen(true)
    fetch()
  }
  return (
    <>
      <Button variant={variant} pending={pending} onClick={tap}>
        {label}
      </Button>
      {failed && <NotFetched />}
      <Dialog open={open && forms !== null} onClose={close} title={title} closeLabel={closeLabel}>
        {forms && children(forms, close)}
      </Dialog>
    </>
  )
}

/** A form folded under its summary. */
export function FormInFold({ summary, children }: { summary: string; children: (forms: Forms) => ReactNode }) {
  const { forms, pending, failed, fetch } = useForms()
  const fold = useRef<HTMLDetailsElement>(null)
  const fetchIfOpen = () => {
    if (fold.current?.open && !forms) fetch()
  }
  const first = useRef(fetchIfOpen)
  // It may have been opened before the page was awake.
  useEffect(() => first.current(), [])
  return (
    <details ref={fold} onToggle={fetchIfOpen}>
      <summary>{summary}</summary>
      {forms ? children(forms) : pending ? <Loading /> : failed && <NotFetched />}
    </details>
  )
}
