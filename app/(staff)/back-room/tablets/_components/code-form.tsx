'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import type { Option } from '@/app/_components/ui/select'
import { makeTabletCodeSchema } from '@/lib/schemas/tablet'
import { makeTabletCodeAction } from '../actions'
import { CodeShown } from './code-shown'
import { TabletFields } from './tablet-fields'

type Props = {
  stations: readonly Option[]
  /** The page on which a tablet types its code. */
  address: string
}

export function CodeForm({ stations, address }: Props) {
  const form = useActionForm(makeTabletCodeSchema, makeTabletCodeAction, {
    // The schema takes a station; the empty first line is refused by it.
    defaultValues: { name: '', station: undefined },
  })
  return (
    <>
      {form.value && <CodeShown key={form.value.code} made={form.value} address={address} />}
      <ActionForm form={form} submitLabel={form.value ? 'Make another code' : 'Make a code'}>
        <TabletFields stations={stations} name={form.text('name')} station={form.text('station')} />
      </ActionForm>
    </>
  )
}
