'use client'
import type { ReactNode, SubmitEvent } from 'react'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'
import { labelsOnSheet } from '@/lib/core/shop/label-grid'
import { MakingNote, useMaking } from './use-making'

type Props = {
  /** The address that makes the labels. */
  action: string
  /** The heads to pick from: boxes named `tag`, each with the tag as its value. */
  children: ReactNode
  className?: string
}

/**
 * Labels of the heads that are picked, on a sheet of paper from its first free place on, or one by one for a label
 * printer. A plain form, so that it works without scripts; with them the labels are made first, with their progress.
 */
export function LabelForm({ action, children, className = 'stack' }: Props) {
  const { making, make, refuse, askOther } = useMaking()

  function print(event: SubmitEvent<HTMLFormElement>) {
    event.preventDefault()
    const asked = new FormData(event.currentTarget, event.nativeEvent.submitter)
    const tags = asked.getAll('tag').length
    if (tags === 0) return refuse('Pick the heads to print labels for.')
    const query = new URLSearchParams([...asked].map(([name, value]) => [name, String(value)]))
    const taken = Number(asked.get('first')) - 1
    void make(`${action}?${query}`, asked.has('single') ? tags : Math.ceil((taken + tags) / labelsOnSheet))
  }

  return (
    <form action={action} method="get" target="_blank" className={className} onSubmit={print} onChange={askOther}>
      {children}
      <div className="stack" id="print">
        <TextInput
          name="first"
          label="First free label on the sheet"
          hint={`1 to ${labelsOnSheet}, row by row from the top left.`}
          inputMode="numeric"
          pattern="[0-9]{1,2}"
          defaultValue="1"
          required
        />
        <div className="row">
          <Button type="submit" variant="main">
            Print the sheet
          </Button>
          <Button type="submit" name="single" value="1" formNoValidate>
            Print single labels
          </Button>
        </div>
        <MakingNote making={making} />
      </div>
    </form>
  )
}
