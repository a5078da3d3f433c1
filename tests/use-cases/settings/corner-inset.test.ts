import { beforeEach, describe, expect, test } from 'vitest'
import { cornerInsetSchema } from '@/lib/schemas/corner-inset'
import { setCornerInset } from '@/lib/use-cases/settings/set-corner-inset'
import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { now, staffedShop, type Staffed } from '../people/staff'

let shop: Staffed
beforeEach(async () => {
  shop = await staffedShop()
})
const inside = (edge: string, end: string) => cornerInsetSchema.parse({ edge, end })
const current = async () => (await seeSettings(shop.staff.orla)).current

describe('where the corners are touched', () => {
  test('is not known until somebody says it; a machinist may answer, once', async () => {
    expect((await current()).values.cornerInset).toBeNull()
    const machinist = shop.staff.dov
    await setCornerInset(machinist, inside('0.5', '3/4'), { now })
    expect(await current()).toMatchObject({ version: 1, values: { cornerInset: { edgeIn: 0.5, endIn: 0.75 } } })
    await expect(setCornerInset(machinist, inside('0', '0'), { now })).rejects.toMatchObject({
      refusal: { code: 'wrong-state' },
    })
    expect((await current()).version).toBe(1)
  })

  test('is changed by the owner, and the history says from what to what', async () => {
    await setCornerInset(shop.staff.orla, inside('0.5', '0.5'), { now })
    await setCornerInset(shop.staff.orla, inside('0.25', '0.5'), { now })
    const { history } = await seeSettings(shop.staff.orla)
    expect(history.map(({ changes }) => changes)).toEqual([
      [
        'Corners touched 0.250 in inside the edges, 0.500 in inside the ends; before: corners touched 0.500 in inside edges and ends',
      ],
      ['Corners touched 0.500 in inside edges and ends'],
    ])
  })

  test('is not answered at the counter, nor without a figure', async () => {
    await expect(setCornerInset(shop.staff.tamsin, inside('0.5', '0.5'), { now })).rejects.toMatchObject({
      refusal: { code: 'not-allowed' },
    })
    expect(cornerInsetSchema.safeParse({ edge: '', end: '0.5' }).success).toBe(false)
    expect(cornerInsetSchema.safeParse({ edge: '4', end: '0.5' }).success).toBe(false)
  })
})
