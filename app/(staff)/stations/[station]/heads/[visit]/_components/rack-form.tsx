'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { setRackPlaceSchema } from '@/lib/schemas/visit'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { useDeeds } from '../../../../_app/use-deeds'

type Props = { screen: Pick<StepScreen, 'visitId' | 'tag' | 'rackPlace'>; onDone: () => void }

/** Where the head was put. */
export function RackForm({ screen, onDone }: Props) {
  const { visitId, tag, rackPlace } = screen
  const deeds = useDeeds()
  const form = useActionForm(setRackPlaceSchema, deeds('rack-place', `${tag}: rack location`), {
    defaultValues: { visitId, rackPlace, was: rackPlace },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <TextInput label="Rack location" required={false} autoComplete="off" {...form.text('rackPlace')} />
    </ActionForm>
  )
}
