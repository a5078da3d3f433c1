import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'

export type VendorField = 'name' | 'phone' | 'email' | 'address' | 'services' | 'boxHeads'

export const vendorLabels: Record<VendorField, string> = {
  name: 'Name',
  phone: 'Phone',
  email: 'E-mail',
  address: 'Address',
  services: 'Services',
  boxHeads: 'Heads in a full box',
}
export const labelOf = (path: string): string => vendorLabels[path as VendorField] ?? path

/** `text`: the props of each control. */
export function VendorFields<Props extends object>({ text }: { text: (name: VendorField) => Props }) {
  return (
    <>
      <TextInput label={vendorLabels.name} required {...text('name')} />
      <TextInput
        label={vendorLabels.phone}
        hint="Shown on the call list"
        required={false}
        type="tel"
        {...text('phone')}
      />
      <TextInput label={vendorLabels.email} required={false} type="email" {...text('email')} />
      <TextArea label={vendorLabels.address} required={false} {...text('address')} />
      <TextArea
        label={vendorLabels.services}
        hint="Angle cuts, welding, inserts, castings…"
        required={false}
        {...text('services')}
      />
      <TextInput
        label={vendorLabels.boxHeads}
        hint="The Away page suggests sending at this number. Leave empty to send each head when it is ready."
        required={false}
        inputMode="numeric"
        {...text('boxHeads')}
      />
    </>
  )
}
