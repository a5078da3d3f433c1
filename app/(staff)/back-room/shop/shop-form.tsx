'use client'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Select } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { changeShopSchema } from '@/lib/schemas/shop'
import { ConflictResolver } from '../_components/conflict-resolver'
import { localeOptions, paperOptions } from '@/app/(sign-in)/setup/shop-options'
import { changeShopAction } from './actions'

const labels: Record<string, string> = {
  name: 'Name',
  address: 'Address',
  phone: 'Phone',
  locale: 'Dates and numbers',
  paper: 'Paper',
  country: 'Country of phone numbers',
}

type Props = {
  fresh: z.input<typeof changeShopSchema>
  by: string
  countries: readonly { readonly code: string; readonly name: string }[]
  ownCountry: string
}

export function ShopForm({ fresh, by, countries, ownCountry }: Props) {
  const form = useActionForm(changeShopSchema, changeShopAction, {
    defaultValues: fresh,
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <TextInput label="Name" hint="Printed at the top of every paper" required {...form.text('name')} />
      <TextArea label="Address" required={false} {...form.text('address')} />
      <TextInput label="Phone" required={false} type="tel" {...form.text('phone')} />
      <Select label="Dates and numbers" options={localeOptions(fresh.locale)} {...form.text('locale')} />
      <Select label="Paper" options={paperOptions} {...form.text('paper')} />
      <Select
        label={labels.country ?? ''}
        hint="Numbers without a country code are dialled as numbers of this country."
        options={[
          {
            value: '',
            label: `${countries.find(({ code }) => code === ownCountry)?.name ?? ownCountry}, by the language`,
          },
          ...countries.map(({ code, name }) => ({ value: code, label: name })),
        ]}
        {...form.text('country')}
      />
      <ConflictResolver
        form={form}
        fresh={fresh}
        what="Shop details"
        labelOf={(path) => labels[path] ?? path}
        by={by}
      />
    </ActionForm>
  )
}
