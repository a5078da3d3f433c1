import type { Actor } from '@/lib/core/access/roles'
import { addVendorSchema } from '@/lib/schemas/vendor'
import { addVendor } from '@/lib/use-cases/vendors/add-vendor'

const vendors = {
  angle: {
    name: 'Slant and True Milling',
    phone: '555-0167',
    email: 'desk@slant-and-true.example',
    address: '3 Weir Lane\nEast Dunmarrow',
    services: 'Angle cuts, intake faces',
    boxHeads: '4',
  },
  welding: {
    name: 'Emberline Weld and Insert',
    phone: '555-0119',
    email: 'work@emberline.example',
    address: 'Unit 9, Old Gasworks\nTollgreave',
    services: 'Welding, seat inserts, guides, straightening',
  },
  castings: {
    name: 'Grayfen Castings',
    phone: '555-0183',
    email: 'orders@grayfen.example',
    address: '200 Causeway Road\nGrayfen',
    services: 'New castings, stock and special chambers, cut to order',
  },
} as const

export type DemoVendors = Readonly<Record<keyof typeof vendors, string>>

/** Ids by what they do. Every one of them is invented. */
export async function seedVendors(actor: Actor, now: Date): Promise<DemoVendors> {
  const add = async (key: keyof DemoVendors): Promise<string> =>
    (await addVendor(actor, addVendorSchema.parse(vendors[key]), { now })).vendorId
  return { angle: await add('angle'), welding: await add('welding'), castings: await add('castings') }
}
