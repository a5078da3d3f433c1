'use client'
import { useState, type ChangeEvent, type ComponentProps } from 'react'
import { useFound, type Picked } from '../shell/use-found'
import { Select } from '../ui/select'
import { TextInput } from '../ui/text-input'
import type { Pick, Picks } from './use-picks'

type Props<W extends keyof Picked> = Omit<ComponentProps<typeof Select>, 'options' | 'value' | 'onChange'> & {
  picks: Picks<W>
  /** The id that is picked; '': none. */
  value: string
  wordsOf: (line: Pick<W>) => string
  onChange: (event: ChangeEvent<HTMLSelectElement>) => unknown
}

/** A select; of a list that is too long to be read, the lines that match what is typed above it. */
export function PickSelect<W extends keyof Picked>({ picks, value, wordsOf, onChange, label, ...rest }: Props<W>) {
  const [typed, setTyped] = useState('')
  const found: readonly Pick<W>[] | null = useFound(picks.what, typed)
  const chosen = picks.known.filter(({ id }) => id === value && found?.every((line) => line.id !== id))
  const lines = found === null ? picks.known : [...chosen, ...found]
  const select = (
    <Select
      {...rest}
      label={label}
      value={value}
      options={lines.map((line) => ({ value: line.id, label: wordsOf(line) }))}
      onChange={(event) => {
        const line = lines.find(({ id }) => id === event.target.value)
        if (line) picks.learn(line)
        return onChange(event)
      }}
    />
  )
  if (!picks.more) return select
  return (
    <>
      <TextInput
        label={`${label}: part of the name`}
        hint="The list shows what matches."
        autoComplete="off"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      {select}
      <p role="status" className="visually-hidden">
        {found && (found.length === 1 ? '1 match' : `${found.length} matches`)}
      </p>
    </>
  )
}
