'use client'
import { useState } from 'react'
import { TakenOver } from '@/app/_components/form/taken-over'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { TextInput } from '@/app/_components/ui/text-input'

type Props = { from: string; to: string }

const files = [
  { kind: 'invoices', label: 'Invoices and credit notes (CSV)' },
  { kind: 'payments', label: 'Payments (CSV)' },
  { kind: 'tax', label: 'Tax by month and customer (CSV)' },
]

/** The days, and a link to each file of them. */
export function BooksForm(props: Props) {
  const [from, setFrom] = useState(props.from)
  const [to, setTo] = useState(props.to)
  const error = from > to ? 'The last day is before the first.' : undefined
  return (
    <div className="stack">
      <div className="row">
        <TakenOver>
          <TextInput
            label="First day"
            type="date"
            name="from"
            value={from}
            onChange={(event) => setFrom(event.target.value)}
          />
          <TextInput
            label="Last day"
            type="date"
            name="to"
            value={to}
            error={error}
            onChange={(event) => setTo(event.target.value)}
          />
        </TakenOver>
      </div>
      <div className="row">
        {files.map(({ kind, label }) => (
          <ButtonLink key={kind} href={`/api/books/${kind}?from=${from}&to=${to}`}>
            {label}
          </ButtonLink>
        ))}
      </div>
    </div>
  )
}
