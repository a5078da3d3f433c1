'use client'
import type { ComponentProps } from 'react'
import { Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { cutTitle } from '@/lib/core/options/plan-words'
import { cutKinds, type CutKind } from '@/lib/core/route/step-ids'

/** A choice of cut as it is typed. */
export type TypedCut = {
  readonly kind: CutKind
  readonly splitBy: 'flat' | 'angle' | 'degrees' | 'margin'
  readonly flatIn: string
  readonly angleIn: string
  readonly angleDeg: string
  readonly stopAtIn: string
  readonly sinkIn: string
  /** Of flat-deck heads. */
  readonly thicknessIn: string
}

type Registered = Pick<ComponentProps<'input'>, 'ref' | 'onChange' | 'onBlur'> & {
  name: string
  error?: string
}

type Props = {
  /** What a form gives for one of its fields. */
  text: (name: keyof TypedCut) => Registered
  typed: Pick<TypedCut, 'kind' | 'splitBy'>
  marginCc: number
  /** Valves in a flat face: cut to clean up or to a thickness. */
  flatDeck?: boolean
}

const hints: Readonly<Record<CutKind, string>> = {
  none: 'The deck stays as it is.',
  'clean-up': 'Only enough to make it flat.',
  flat: 'Flat to the target.',
  angle:
    'Deep at one edge, nothing at the other. A vendor that does not finish to size leaves nothing for us: take angle and flat then.',
  'angle-flat': 'The angle first, then the last flat cut to size.',
}

const flatDeckKinds: readonly CutKind[] = ['none', 'clean-up', 'flat']

/** Which cut, how it is shared between flat and angle, and the seat work that is still to come. */
export function CutChoice({ text, typed, marginCc, flatDeck = false }: Props) {
  const kinds = flatDeck ? flatDeckKinds : cutKinds
  return (
    <>
      <Choice
        label="Kind of cut"
        options={kinds.map((kind) => ({
          value: kind,
          label: flatDeck && kind === 'flat' ? 'Flat cut to a thickness' : cutTitle(kind),
          hint: flatDeck && kind === 'flat' ? 'Flat until the head is as thick as wanted.' : hints[kind],
        }))}
        {...text('kind')}
      />
      {typed.kind === 'clean-up' && (
        <TextInput
          label="Stop no deeper than"
          hint="In inches, or with its unit: 8 thou."
          inputMode="decimal"
          required
          {...text('stopAtIn')}
        />
      )}
      {flatDeck && typed.kind === 'flat' && (
        <TextInput
          label="Thickness wanted"
          hint="At the thinnest corner after the cut, in inches. Follow the engine maker’s minimum."
          inputMode="decimal"
          required
          {...text('thicknessIn')}
        />
      )}
      {typed.kind === 'angle-flat' && (
        <>
          <Choice
            label="Split between flat and angle"
            options={[
              {
                value: 'margin',
                label: `Flat part worth ${marginCc} cc`,
                hint: 'the shop’s margin for the last cut in house',
              },
              { value: 'flat', label: 'By the flat part' },
              { value: 'angle', label: 'By the angle part', hint: 'its depth at the deep edge' },
              { value: 'degrees', label: 'By the angle in degrees' },
            ]}
            {...text('splitBy')}
          />
          {typed.splitBy === 'flat' && (
            <TextInput label="Flat part" hint="0.020 or 20 thou" inputMode="decimal" required {...text('flatIn')} />
          )}
          {typed.splitBy === 'angle' && (
            <TextInput
              label="Angle part at the deep edge"
              hint="0.063 or 63 thou"
              inputMode="decimal"
              required
              {...text('angleIn')}
            />
          )}
          {typed.splitBy === 'degrees' && (
            <TextInput label="Angle, degrees" inputMode="decimal" required {...text('angleDeg')} />
          )}
        </>
      )}
      {typed.kind !== 'none' && (
        <TextInput
          label="Seat work still to come sinks the valves by"
          hint={
            flatDeck
              ? 'Leave empty when no seat work is planned. Every valve then lies that much deeper.'
              : 'Leave empty when no seat work is planned. The cut then aims below the target by what it adds.'
          }
          inputMode="decimal"
          required={false}
          {...text('sinkIn')}
        />
      )}
    </>
  )
}
