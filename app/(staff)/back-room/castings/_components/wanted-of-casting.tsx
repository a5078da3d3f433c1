'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { WantedFields } from '@/app/_components/wanted/wanted-fields'
import { wantedLabel } from '@/app/_components/wanted/wanted-label'
import { WantedShown } from '@/app/_components/wanted/wanted-shown'
import { typedWantedKeys } from '@/lib/core/wanted/figures'
import { changeCastingWantedSchema } from '@/lib/schemas/wanted'
import type { CastingSeen } from '@/lib/use-cases/castings/see-castings'
import { ConflictResolver } from '../../_components/conflict-resolver'
import { changeCastingWantedAction } from '../actions'

type Props = { casting: Pick<CastingSeen, 'id' | 'name' | 'version' | 'wanted' | 'chamberShape'>; mayChange: boolean }

/** What benches work to on heads of this casting, where their job says nothing. */
export function WantedOfCasting({ casting, mayChange }: Props) {
  const [open, setOpen] = useState(false)
  const { lines, faults } = casting.wanted
  return (
    <section className="part" aria-label="Wanted figures">
      <h2>Wanted figures</h2>
      <p className="soft">What benches work to on such heads, where the job says nothing else.</p>
      {lines.length > 0 ? <WantedShown lines={lines} faults={faults} /> : <p className="soft">None on record.</p>}
      {mayChange && !open && (
        <div>
          <Button onClick={() => setOpen(true)}>Change the wanted figures</Button>
        </div>
      )}
      {open && <WantedForm casting={casting} onClose={() => setOpen(false)} />}
    </section>
  )
}

function WantedForm({ casting, onClose }: Pick<Props, 'casting'> & { onClose: () => void }) {
  const fresh = { castingId: casting.id, version: casting.version, wanted: casting.wanted.own }
  const form = useActionForm(changeCastingWantedSchema, changeCastingWantedAction, {
    defaultValues: fresh,
    onDone: onClose,
  })
  return (
    <ActionForm
      form={form}
      submitLabel="Save the wanted figures"
      actions={
        <Button variant="quiet" onClick={onClose}>
          Cancel
        </Button>
      }
    >
      <WantedFields
        keys={typedWantedKeys.filter((key) => key !== 'finishedThicknessIn' || casting.chamberShape === 'flat-deck')}
        figure={(key, words) => <FormFigure key={key} form={form} name={`wanted.${key}`} {...words} />}
      />
      <ConflictResolver
        form={form}
        fresh={fresh}
        what={`Wanted figures of ${casting.name}`}
        labelOf={wantedLabel}
        by=""
      />
    </ActionForm>
  )
}
