import { expect, it } from 'vitest'
import { refuseAlike } from '@/lib/data/alike'
import { seeAlike } from '@/lib/use-cases/customers/see-alike'
import { describeOnBoth } from '@/tests/setup/database'
import { book, counter, head, openShop, refusalOf } from '../jobs/counter-shop'

const nobody = { id: '', name: '', phone: '', email: '' }
const contact = { id: '', email: '', address: '' }

describeOnBoth('who and what a booking may mean', (open) => {
  async function shop() {
    const database = await open()
    await openShop(database)
    const rook = await book({ heads: [head({ stamp: 'TR 1', tag: 'blue-7' })] })
    await book({
      customer: { ...contact, name: 'Ann-Marie Böhm', phone: '+1 555 0139', email: 'am@post.example' },
      heads: [head()],
    })
    const { customerId } = await database.client.job.findUniqueOrThrow({ where: { number: rook.number } })
    return { client: database.client, rook, customerId }
  }
  const named = async (typed: Partial<typeof nobody>) =>
    (await seeAlike(counter, { customer: { ...nobody, ...typed }, heads: [] })).customers.map(({ name, by }) => [
      name,
      by,
    ])

  it('a customer by number, address or name', async () => {
    const { customerId } = await shop()
    expect(await named({ name: 'Tamsyn Rook' })).toEqual([['Tamsin Rook', 'name']])
    expect(await named({ name: 'Rook, Tamsin' })).toEqual([['Tamsin Rook', 'name']])
    expect(await named({ name: 'Bohm Annmarie' })).toEqual([])
    expect(await named({ name: 'annmarie bohm' })).toEqual([['Ann-Marie Böhm', 'name']])
    expect(await named({ name: 'Somebody', phone: '555-010-4477' })).toEqual([['Tamsin Rook', 'phone']])
    expect(await named({ name: 'Somebody', phone: '555 0139' })).toEqual([['Ann-Marie Böhm', 'phone']])
    expect(await named({ name: 'Somebody', email: 'am@post.example' })).toEqual([['Ann-Marie Böhm', 'email']])
    expect(await named({ name: 'Ansel Brook', phone: '555 0140' })).toEqual([])
    expect(await named({})).toEqual([])
    expect(await named({ id: customerId, name: 'Tamsin Rook' })).toEqual([])
  })

  it('a head by its stamp or by a tag that it wears or wore', async () => {
    const { client, rook } = await shop()
    const heads = async (typed: { stamp?: string; tag?: string; headId?: string }) =>
      (await seeAlike(counter, { customer: nobody, heads: [{ headId: '', stamp: '', tag: '', ...typed }] })).heads.map(
        ({ headId, by }) => [headId, by],
      )
    const { headId } = rook.heads[0] ?? { headId: '' }
    expect(await heads({ stamp: 'tr-1' })).toEqual([[headId, 'stamp']])
    expect(await heads({ stamp: 'TR 2' })).toEqual([])
    expect(await heads({ tag: 'BLUE-7' })).toEqual([[headId, 'tag']])
    await client.tagAssignment.updateMany({ where: { headId }, data: { activeNumber: null, to: new Date() } })
    expect(await heads({ tag: 'blue-7', stamp: 'TR1' })).toEqual([[headId, 'tag']])
    expect(await heads({ stamp: 'TR 1', headId })).toEqual([])
    expect(await heads({})).toEqual([])
  })

  it('is refused until it is answered, with the ids', async () => {
    const { client, rook, customerId } = await shop()
    const headId = rook.heads[0]?.headId ?? ''
    const typed = {
      customer: { ...nobody, name: 'Tamsin Rook' },
      heads: [{ headId: '', stamp: 'TR 1', tag: '' }],
    }
    const refusal = await refusalOf(refuseAlike(client, typed, { customers: [], heads: [] }))
    expect(refusal).toMatchObject({ code: 'ambiguous', alike: { customers: [customerId], heads: [headId] } })
    expect(Object.keys(refusal.fields).sort()).toEqual(['customer.name', 'heads.0.stamp'])
    const half = await refusalOf(refuseAlike(client, typed, { customers: [customerId], heads: [] }))
    expect(half.alike).toEqual({ customers: [], heads: [headId] })
    await refuseAlike(client, typed, { customers: [customerId], heads: [headId] })
  })
})
