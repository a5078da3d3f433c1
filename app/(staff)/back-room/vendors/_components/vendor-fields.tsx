import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'

export type VendorField = 'name' | 'phone' | 'email' | 'address' | 'services' | 'boxHeads'

export const vendorLabels: Record<VendorField, string> = {
  name: 'Name',
  phone: 'Phone',
  email: 'E-mail',
  address: 'Address',
  services: 'What they do for us',
  boxHeads: 'Heads in a full box',
}
export const labelOf = (path: string): string => vendorLabels[path as VendorField] ?? path

/** `text`: what the form gives each control. */
export function VendorFields<Props extends object>({ text }: { text: (name: VendorField) => Props }) {
  return (
    <>
      <TextInput label={vendorLabels.name} required {...text('name')} />
      <TextInput
        label={vendorLabels.phone}
        hint="Stands on the call list of what is away"
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
        hint="Away waits for so many before it says: send. Empty: each head goes when it is ready."
        required={false}
        inputMode="numeric"
        {...text('boxHeads')}
      />
    </>
  )
}
