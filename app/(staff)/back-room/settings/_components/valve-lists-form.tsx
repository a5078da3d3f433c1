'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { shimsText, type ValveLists } from '@/lib/core/valve-sheet/lists'
import { valveListsSchema } from '@/lib/schemas/valve-lists'
import fields from '../../_components/fields.module.css'
import { changeValveListsAction } from '../actions'

/** Shims in the drawer and seat angles that are cut here, to be picked from at the valves. */
export function ValveListsForm({ lists }: { lists: ValveLists }) {
  const form = useActionForm(valveListsSchema, changeValveListsAction, {
    defaultValues: { shims: shimsText(lists.shimsIn), angles: lists.seatAngles.join(', ') },
  })
  return (
    <ActionForm form={form} submitLabel="Save lists">
      <div className={fields.grid}>
        <TextInput label="Shims the shop has" hint="In inches, apart by commas." {...form.text('shims')} />
        <TextInput label="Seat angles" hint="As 30 45 60, sets apart by commas." {...form.text('angles')} />
      </div>
    </ActionForm>
  )
}
