'use client'
import { useState } from 'react'
import { useWatch } from 'react-hook-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import type { Picks } from '@/app/_components/pick/use-picks'
import { Choice } from '@/app/_components/ui/choice'
import type { BookingActionForm } from './booking-action-form'

type Props = { form: BookingActionForm; castings: Picks<'castings'> }

/** What the heads are cut to: those with chambers to a volume, flat-deck heads to a thickness or just until flat. */
export function TargetPart({ form, castings }: Props) {
  const heads = useWatch({ control: form.form.control, name: 'heads' })
  const flatDecks = new Set(castings.known.filter(({ isFlatDeck }) => isFlatDeck).map(({ id }) => id))
  const flat = heads.filter(({ castingId }) => flatDecks.has(castingId)).length
  return (
    <>
      {flat < heads.length && (
        <FormFigure
          form={form}
          name="targetCc"
          label="Target chamber"
          hint="For all heads; a head that differs says so under “More about this head”."
          required={false}
          quantity="chamberVolume"
        />
      )}
      {flat > 0 && <ThicknessPart form={form} />}
    </>
  )
}

function ThicknessPart({ form }: Pick<Props, 'form'>) {
  const thickness = useWatch({ control: form.form.control, name: 'wanted.finishedThicknessIn' }) ?? ''
  const [chosen, setChosen] = useState<'clean-up' | 'thickness' | null>(null)
  const kind = chosen ?? (thickness === '' ? 'clean-up' : 'thickness')
  const choose = (value: 'clean-up' | 'thickness') => {
    setChosen(value)
    if (value === 'clean-up') form.form.setValue('wanted.finishedThicknessIn', '')
  }
  return (
    <>
      <Choice
        label="Flat-deck heads are cut"
        name="flat-deck-cut"
        options={[
          { value: 'clean-up', label: 'Clean-up', hint: 'Only until they are flat.' },
          { value: 'thickness', label: 'To a thickness' },
        ]}
        value={kind}
        onChange={(event) => choose(event.target.value === 'thickness' ? 'thickness' : 'clean-up')}
      />
      {kind === 'thickness' && (
        <FormFigure
          form={form}
          name="wanted.finishedThicknessIn"
          label="Finished thickness"
          hint="At the thinnest corner. The engine maker’s minimum stands on the casting record."
          required={false}
          quantity="thickness"
        />
      )}
    </>
  )
}
