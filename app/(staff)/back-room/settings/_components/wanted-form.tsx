'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { WantedFields } from '@/app/_components/wanted/wanted-fields'
import { wantedLabel } from '@/app/_components/wanted/wanted-label'
import { shopWantedKeys, type WantedFigures } from '@/lib/core/wanted/figures'
import { changeShopWantedSchema, wantedForm } from '@/lib/schemas/wanted'
import { ConflictResolver } from '../../_components/conflict-resolver'
import { changeShopWantedAction } from '../actions'

type Props = { version: number; wanted: WantedFigures; by: string }

/** What the benches work to where neither job nor casting record says it. */
export function ShopWantedForm({ version, wanted, by }: Props) {
  const fresh = { version, wanted: wantedForm(shopWantedKeys, wanted), reason: '' }
  const form = useActionForm(changeShopWantedSchema, changeShopWantedAction, { defaultValues: fresh })
  return (
    <ActionForm form={form} submitLabel="Save the wanted figures">
      <WantedFields
        keys={shopWantedKeys}
        figure={(key, words) => <FormFigure key={key} form={form} name={`wanted.${key}`} {...words} />}
      />
      <TextInput label="Reason" hint="Kept in the history of the limits." required {...form.text('reason')} />
      <ConflictResolver form={form} fresh={fresh} what="The wanted figures" labelOf={labelOf} by={by} />
    </ActionForm>
  )
}

const labelOf = (path: string): string => (path === 'reason' ? 'Reason' : wantedLabel(path))
