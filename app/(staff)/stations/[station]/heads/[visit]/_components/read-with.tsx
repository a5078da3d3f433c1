'use client'
import { Select } from '@/app/_components/ui/select'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'

export type ReadWithProps = {
  readonly screen: Pick<StepScreen, 'instruments' | 'personId' | 'step'>
  /** What was named so far, by kind of reading. */
  readonly instruments: Readonly<Record<string, string>>
  readonly onChange: (instruments: Readonly<Record<string, string>>) => void
}

type Props = ReadWithProps & {
  readonly kind: ReadingKind
  readonly label: string
  /** Several stand together under one heading that says what they are. */
  readonly inList?: boolean
}

/** What one kind of figure was read with: only instruments that measure it, the one used last first. */
export function ReadWith({ kind, label, inList = false, screen, instruments, onChange }: Props) {
  const able = screen.instruments[kind] ?? []
  if (able.length === 0) return null
  return (
    <Select
      label={inList ? label : 'Read with'}
      aria-label={`Read with: ${label}`}
      required={false}
      empty="Not named"
      value={instruments[kind] ?? ''}
      onChange={(event) => onChange({ ...instruments, [kind]: event.target.value })}
      options={able.map((one) => ({
        value: one.id,
        label: one.lastCheckedOn ? `${one.name}, checked ${one.lastCheckedOn}` : one.name,
      }))}
    />
  )
}

/**
 * Under which names the choice of a unit is kept on this device: this person's comes first, then the last that anybody
 * chose at this station.
 */
export const unitNames = ({ screen }: ReadWithProps, kind: ReadingKind): string =>
  `${screen.personId} ${kind}|${screen.step.station} ${kind}`
