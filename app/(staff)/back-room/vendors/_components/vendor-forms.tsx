'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { addVendorSchema, changeVendorSchema } from '@/lib/schemas/vendor'
import type { VendorSeen } from '@/lib/use-cases/vendors/see-vendors'
import { ConflictResolver } from '../../_components/conflict-resolver'
import { addVendorAction, changeVendorAction } from '../actions'
import { labelOf, VendorFields } from './vendor-fields'

export function AddVendorForm() {
  const form = useActionForm(addVendorSchema, addVendorAction, {
    defaultValues: { name: '', phone: '', email: '', address: '', services: '', boxHeads: '' },
  })
  return (
    <ActionForm form={form} submitLabel="Add this vendor">
      <VendorFields text={form.text} />
    </ActionForm>
  )
}

export function VendorForm({ vendor, by }: { vendor: VendorSeen; by: string }) {
  const { id: vendorId, version, name, phone, email, address, services } = vendor
  const boxHeads = vendor.boxHeads === null ? '' : String(vendor.boxHeads)
  const fresh = { vendorId, version, name, phone, email, address, services, boxHeads }
  const form = useActionForm(changeVendorSchema, changeVendorAction, {
    defaultValues: fresh,
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <VendorFields text={form.text} />
      <ConflictResolver form={form} fresh={fresh} what={vendor.name} labelOf={labelOf} by={by} />
    </ActionForm>
  )
}
