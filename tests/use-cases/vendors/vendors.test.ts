import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { auditChanges } from '@/lib/data/stored/records'
import { addVendorSchema } from '@/lib/schemas/vendor'
import { addVendor } from '@/lib/use-cases/vendors/add-vendor'
import { changeVendor } from '@/lib/use-cases/vendors/change-vendor'
import { retireVendor } from '@/lib/use-cases/back-room/retire'
import { seeVendor, seeVendors } from '@/lib/use-cases/vendors/see-vendors'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'

const vendor = addVendorSchema.parse({
  name: 'Tilt and Sons',
  phone: '555-0155',
  email: 'yard@tilt.example',
  address: '8 Cooper Lane',
  services: 'Angle cuts',
})

let shop: Staffed
let vendorId: string
beforeEach(async () => {
  shop = await staffedShop()
  vendorId = (await addVendor(shop.staff.orla, vendor, { now })).vendorId
})
const look = () => shop.database.client.vendor.findMany()

describe('only the owner', () => {
  const deeds = {
    'adds vendors': (actor: Actor) => addVendor(actor, vendor, { now }),
    'changes them': (actor: Actor) => changeVendor(actor, { ...vendor, vendorId, version: 1, name: 'Mine' }, { now }),
    'retires them': (actor: Actor) => retireVendor(actor, { vendorId, version: 1, retired: true }, { now }),
  }
  const cases = notOwners.flatMap((who) => Object.entries(deeds).map(([what, deed]) => ({ who, what, deed })))
  test.each(cases)('$what: $who is refused', ({ who, deed }) => expectRefused(shop.staff[who], deed, look))
})

test('a change takes the version forward; a stale one is a conflict', async () => {
  await changeVendor(shop.staff.orla, { ...vendor, vendorId, version: 1, services: 'Angle cuts, inserts' }, { now })
  expect((await seeVendor(shop.staff.orla, vendorId)).vendor).toMatchObject({
    version: 2,
    services: 'Angle cuts, inserts',
  })
  const before = await look()
  await expect(
    changeVendor(shop.staff.orla, { ...vendor, vendorId, version: 1, name: 'Late' }, { now }),
  ).rejects.toMatchObject({ refusal: { code: 'conflict' } })
  expect(await look()).toEqual(before)
})

test('retired ones stand last and can be taken back', async () => {
  await addVendor(shop.staff.orla, { ...vendor, name: 'Zenith Yard' }, { now })
  await retireVendor(shop.staff.orla, { vendorId, version: 1, retired: true }, { now })
  expect((await seeVendors(shop.staff.orla)).rows.map(({ name, retired }) => [name, retired])).toEqual([
    ['Zenith Yard', false],
    ['Tilt and Sons', true],
  ])
  await retireVendor(shop.staff.orla, { vendorId, version: 2, retired: false }, { now })
  expect((await seeVendor(shop.staff.orla, vendorId)).vendor.retired).toBe(false)
})

test('the trail says that a number changed, never which', async () => {
  const after = { ...vendor, vendorId, version: 1, name: 'Tilt', phone: '555-0199', email: '', address: '' }
  await changeVendor(shop.staff.orla, after, { now })
  const entries = await shop.database.client.auditEntry.findMany({ where: { subject: 'vendor' } })
  expect(JSON.stringify(entries)).not.toMatch(/555-01|tilt\.example|Cooper Lane/)
  expect(auditChanges.read(entries.at(-1)?.changes ?? '', '')).toEqual({
    name: { from: 'Tilt and Sons', to: 'Tilt' },
    contact: ['phone', 'email', 'address'],
  })
})

test('one that is not there is not found', async () => {
  await expect(seeVendor(shop.staff.orla, 'nobody')).rejects.toMatchObject({ refusal: { code: 'not-found' } })
  await expect(
    retireVendor(shop.staff.orla, { vendorId: 'nobody', version: 1, retired: true }, { now }),
  ).rejects.toMatchObject({ refusal: { code: 'not-found' } })
})
