'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { ConflictResolver } from '@/app/(staff)/back-room/_components/conflict-resolver'
import { changeOrderSchema, noteOutsideCostSchema } from '@/lib/schemas/outside'
import { changeOrderAction, noteOutsideCostAction } from '../actions'

type Order = { readonly orderId: string; readonly version: number; readonly number: string }

const freightLabels: Readonly<Record<string, string>> = {
  freight: 'Freight out',
  tracking: 'Tracking number out',
  returnTracking: 'Tracking number back',
}

type Travel = { readonly freight: string; readonly tracking: string; readonly returnTracking: string }

/** How it travels, out and back. */
export function FreightForm({ orderId, version, number, ...travel }: Order & Travel) {
  const fresh = { orderId, version, ...travel }
  const form = useActionForm(changeOrderSchema, changeOrderAction, {
    defaultValues: fresh,
  })
  return (
    <details>
      <summary>Freight and tracking</summary>
      <ActionForm form={form} submitLabel="Save freight and tracking">
        <div className="columns">
          {(['freight', 'tracking', 'returnTracking'] as const).map((name) => (
            <TextInput key={name} label={freightLabels[name] ?? ''} required={false} {...form.text(name)} />
          ))}
        </div>
        <ConflictResolver
          form={form}
          fresh={fresh}
          what={`Order ${number}`}
          labelOf={(path) => freightLabels[path] ?? path}
          by=""
        />
      </ActionForm>
    </details>
  )
}

const costLabels: Readonly<Record<string, string>> = { cost: 'Vendor’s work', freightCost: 'Freight' }

/** What it came to; only drawn for those who may see it. */
export function CostForm({ orderId, version, number, ...cost }: Order & { cost: string; freightCost: string }) {
  const fresh = { orderId, version, ...cost }
  const form = useActionForm(noteOutsideCostSchema, noteOutsideCostAction, {
    defaultValues: fresh,
  })
  return (
    <details>
      <summary>Cost</summary>
      <ActionForm form={form} submitLabel="Save cost">
        <div className="columns">
          {(['cost', 'freightCost'] as const).map((name) => (
            <TextInput
              key={name}
              label={costLabels[name] ?? ''}
              inputMode="decimal"
              required={false}
              {...form.text(name)}
            />
          ))}
        </div>
        <ConflictResolver
          form={form}
          fresh={fresh}
          what={`Order ${number}`}
          labelOf={(path) => costLabels[path] ?? path}
          by=""
        />
      </ActionForm>
    </details>
  )
}
