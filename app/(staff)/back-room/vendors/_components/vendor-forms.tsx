'use client'
import { addVendorSchema, changeVendorSchema } from '@/lib/schemas/vendor'
import type { VendorSeen } from '@/lib/use-cases/vendors/see-vendors'
import { EntryForm } from '../../_components/entry-form'
import { addVendorAction, changeVendorAction } from '../actions'
import { labelOf, VendorFields } from './vendor-fields'

export const AddVendorForm = () => (
  <EntryForm
    schema={addVendorSchema}
    action={addVendorAction}
    values={{ name: '', phone: '', email: '', address: '', services: '', boxHeads: '' }}
    submitLabel="Add this vendor"
    fields={VendorFields}
  />
)

export function VendorForm({ vendor, by }: { vendor: VendorSeen; by: string }) {
  const { id: vendorId, version, name, phone, email, address, services } = vendor
  const boxHeads = vendor.boxHeads === null ? '' : String(vendor.boxHeads)
  return (
    <EntryForm
      schema={changeVendorSchema}
      action={changeVendorAction}
      values={{ vendorId, version, name, phone, email, address, services, boxHeads }}
      submitLabel="Save"
      fields={VendorFields}
      kept={{ what: name, labelOf, by }}
    />
  )
}
