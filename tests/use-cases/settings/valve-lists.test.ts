import { beforeEach, expect, test } from 'vitest'
import { valveListsSchema } from '@/lib/schemas/valve-lists'
import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { setValveLists } from '@/lib/use-cases/settings/set-valve-lists'
import { now, staffedShop, type Staffed } from '../people/staff'

let shop: Staffed
beforeEach(async () => {
  shop = await staffedShop()
})

test('shims and seat angles are the owner’s to change, and the history says from what to what', async () => {
  const lists = valveListsSchema.parse({ shims: '.030, 0.015', angles: '30 45 60' })
  await expect(setValveLists(shop.staff.dov, lists, { now })).rejects.toMatchObject({
    refusal: { code: 'not-allowed' },
  })
  await setValveLists(shop.staff.orla, lists, { now })
  const { current, history } = await seeSettings(shop.staff.orla)
  expect(current.values.valveLists).toEqual({ shimsIn: [0.015, 0.03], seatAngles: ['30 45 60'] })
  expect(history[0]?.changes).toEqual([
    'Shims the shop has: 0.0150, 0.0300; before: 0.0150, 0.0300, 0.0600',
    'Seat angles: 30 45 60; before: 30 45 60, 15 45 75',
  ])
})

test('what is no shim and no angle is refused at its field', () => {
  const parsed = valveListsSchema.safeParse({ shims: '0.030, thick', angles: '30 450' })
  expect(parsed.error?.issues.map(({ path }) => path.join('.'))).toEqual(['shims', 'angles'])
})
