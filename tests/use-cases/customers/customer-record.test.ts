import { expect, it } from 'vitest'
import { differences, merged } from '@/app/_components/form/differences'
import { changeCustomerSchema } from '@/lib/schemas/customer'
import { changeShopSchema } from '@/lib/schemas/shop'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { blankCustomer } from '@/lib/use-cases/customers/blank-customer'
import { changeCustomer } from '@/lib/use-cases/customers/change-customer'
import { mergeCustomers } from '@/lib/use-cases/customers/merge-customers'
import { seeCustomer } from '@/lib/use-cases/customers/see-customer'
import { seeCustomers } from '@/lib/use-cases/customers/see-customers'
import { changeShop } from '@/lib/use-cases/shop/change-shop'
import { undoMerge } from '@/lib/use-cases/customers/undo-merge'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { logCall } from '@/lib/use-cases/jobs/log-call'
import { takePayment } from '@/lib/use-cases/jobs/take-payment'
import { describeOnBoth } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

const contact = { id: '', email: '', address: '' }

describeOnBoth('a customer', (open) => {
  /** The same person twice, with a job each, and somebody else. */
  async function shop() {
    const database = await open()
    await openShop(database)
    const first = await book({
      customer: { ...contact, name: 'Tamsin Rook', phone: '212-555-0199' },
      heads: [head({ stamp: 'TR 1' })],
    })
    const second = await book({
      customer: { ...contact, name: 'Tamsyn  Rook', phone: '555-0139' },
      heads: [head({ stamp: 'TR 9' })],
    })
    const { client } = database
    const ownerOf = async (number: string) =>
      (await client.job.findUniqueOrThrow({ where: { number }, select: { customerId: true } })).customerId
    return { client, first, second, ownerOf, into: await ownerOf(first.number), from: await ownerOf(second.number) }
  }
  const merge = { fromVersion: 1, intoVersion: 1, reason: 'booked twice' }
  const names = async (q: string) =>
    (await findAnything(counter, { q })).hits.flatMap((hit) => (hit.kind === 'customer' ? [hit.name] : []))

  it('has a page with jobs, heads, money and what was said, for the counter and the owner', async () => {
    const { client, first, into } = await shop()
    await logCall(counter, { jobId: first.jobId, text: 'wants it by Friday' }, at(monday))
    const payment = { kind: 'deposit', amount: '50', method: 'cash', how: '', confirmed: true } as const
    await takePayment(counter, { jobId: first.jobId, ...payment }, at(monday))
    const seen = await seeCustomer(counter, into)
    expect(seen).toMatchObject({
      contact: { name: 'Tamsin Rook', phone: '212-555-0199' },
      // Nothing was charged, and 50.00 was paid: the shop owes it.
      sums: { jobs: 1, open: 1, owedMinor: -5000 },
      jobs: [{ number: first.number, heads: [{ tag: first.heads[0]?.tag }] }],
      heads: [{ stamp: 'TR 1', casting: 'Halden 4', movedTo: '' }],
      said: [{ text: 'wants it by Friday', by: counter.name, jobNumber: first.number }],
      money: {
        payments: [{ minor: 5000, kind: 'deposit', voided: false }],
        papers: [{ kind: 'receipt', minor: 5000 }],
      },
    })
    expect((await refusalOf(seeCustomer(machinist, into))).code).toBe('not-allowed')
    expect((await refusalOf(seeCustomer(counter, 'nobody'))).code).toBe('not-found')
    expect((await seeCustomers(counter, { q: '', page: 1 })).rows.map(({ name }) => name)).toEqual([
      'Tamsin Rook',
      'Tamsyn  Rook',
    ])
    expect((await seeCustomers(counter, { q: 'rook tamsin', page: 1 })).rows).toMatchObject([
      { name: 'Tamsin Rook', jobs: 1, owedMinor: -5000 },
    ])

    // The head comes again, with somebody else.
    await client.visit.updateMany({ where: { jobId: first.jobId }, data: { scrappedAt: monday } })
    const { headId = '' } = first.heads[0] ?? {}
    const visit = await client.visit.findFirstOrThrow({ where: { headId } })
    await client.visitPlace.update({ where: { visitId: visit.id }, data: { whereabouts: 'handed over' } })
    const other = await book(
      { customer: { ...contact, name: 'Ansel Brook', phone: '' }, heads: [head({ headId })] },
      at(new Date(monday.getTime() + 1000)),
    )
    expect((await seeCustomer(counter, into)).heads).toMatchObject([{ movedTo: 'Ansel Brook', lastJob: other.number }])
  })

  it('is changed, is found by the new name and number, and the trail says no contact', async () => {
    const { client, into } = await shop()
    const change = {
      ...{ customerId: into, version: 1, name: 'Tamsin Brook', phone: '020 7946 0123', otherPhone: '212-555-0150' },
      ...{ email: 't@post.example', address: '', note: '' },
    }
    await changeCustomer(counter, changeCustomerSchema.parse(change), at(monday))
    expect(await names('brook tamsin')).toEqual(['Tamsin Brook'])
    expect(await names('212 555 0150')).toEqual(['Tamsin Brook'])
    expect(await names('212 555 0199')).toEqual([])
    expect(await client.customerContact.findUniqueOrThrow({ where: { customerId: into } })).toMatchObject({
      nameLower: 'tamsin brook',
      otherPhoneE164: '+12125550150',
    })
    // Somebody else had the page open since before: both sides are told apart, and keeping one's own keeps the other's rest.
    const opened = { ...change, name: 'Tamsin Rook', phone: '212-555-0199', otherPhone: '', email: '' }
    const mine = { ...opened, address: '9 Quay Lane', email: 'tamsin@post.example' }
    const stale = await refusalOf(changeCustomer(owner, changeCustomerSchema.parse(mine), at(monday)))
    expect(stale.code).toBe('conflict')
    const { contact, version } = await seeCustomer(owner, into)
    const { blankedAt: _blanked, ...now } = contact
    const fresh = { customerId: into, version, ...now }
    const named = (found: readonly { readonly path: string }[]) => found.map(({ path }) => path).sort()
    expect(named(differences(opened, mine))).toEqual(['address', 'email'])
    expect(named(differences(opened, fresh))).toEqual(['email', 'name', 'otherPhone', 'phone'])
    await changeCustomer(owner, changeCustomerSchema.parse(merged(opened, mine, fresh)), at(monday))
    expect((await seeCustomer(owner, into)).contact).toMatchObject({
      ...{ name: 'Tamsin Brook', phone: '020 7946 0123', otherPhone: '212-555-0150' },
      ...{ address: '9 Quay Lane', email: 'tamsin@post.example' },
    })
    const { lines } = await seeTrail(owner, { find: '', before: null })
    expect(lines[0]?.sentence).toBe('Changed a customer’s contact details')
    expect(JSON.stringify(lines[1])).toMatch(/contact: name, phone, email, other phone/)
    expect(JSON.stringify(lines.slice(0, 2))).not.toMatch(/Brook|7946|Quay|post\.example/)
  })

  it('has numbers of the shop’s country, and of another once that is chosen', async () => {
    const { client, into } = await shop()
    const e164 = async () => (await client.customerContact.findUniqueOrThrow({ where: { customerId: into } })).phoneE164
    await client.customerContact.update({ where: { customerId: into }, data: { phone: '020 7946 0123' } })
    const { version, ...facts } = await client.shop.findUniqueOrThrow({ where: { id: 1 } })
    const typed = (country: string) => changeShopSchema.parse({ ...facts, country, version })
    await changeShop(owner, typed('GB'), at(monday))
    expect(await e164()).toBe('+442079460123')
    expect(await names('+44 20 7946')).toEqual(['Tamsin Rook'])
  })

  it('is merged with all its jobs, found by either name, and comes back when the owner undoes it', async () => {
    const { client, first, second, ownerOf, into, from } = await shop()
    await mergeCustomers(counter, { ...merge, fromId: from, intoId: into }, at(monday))
    expect((await seeCustomer(counter, into)).jobs.map(({ number }) => number).sort()).toEqual([
      first.number,
      second.number,
    ])
    expect((await seeCustomer(counter, from)).mergedIntoId).toBe(into)
    expect(await names('tamsyn')).toEqual(['Tamsin Rook'])
    expect(await names('555 0139')).toEqual(['Tamsin Rook'])
    // What is booked for the record that ended goes to the one that stayed.
    const after = await book({ customer: { ...contact, id: from, name: '', phone: '' }, heads: [head()] })
    expect(await ownerOf(after.number)).toBe(into)

    const [made] = (await seeCustomer(owner, into)).merges
    expect(made).toMatchObject({ name: 'Tamsyn  Rook', reason: 'booked twice', by: counter.name })
    const mergeId = made?.id ?? ''
    expect((await refusalOf(undoMerge(counter, { mergeId }, at(monday)))).code).toBe('not-allowed')
    await undoMerge(owner, { mergeId }, at(monday))
    expect([await ownerOf(first.number), await ownerOf(second.number), await ownerOf(after.number)]).toEqual([
      into,
      from,
      into,
    ])
    expect(await names('tamsyn')).toEqual(['Tamsyn  Rook'])
    expect((await refusalOf(undoMerge(owner, { mergeId }, at(monday)))).code).toBe('conflict')
    expect(await client.customer.findUniqueOrThrow({ where: { id: from } })).toMatchObject({ mergedIntoId: null })
    const { lines } = await seeTrail(owner, { find: '', before: null })
    expect(lines.map(({ sentence }) => sentence)).toEqual(
      expect.arrayContaining(['Undid the merge of two customers', 'Merged two customers: booked twice']),
    )
  })

  it('is merged in a row, and undone in the reverse order only', async () => {
    const { first, second, ownerOf, into, from } = await shop()
    const third = await book({ customer: { ...contact, name: 'T. Rook', phone: '' }, heads: [head()] })
    const last = await ownerOf(third.number)
    await mergeCustomers(counter, { ...merge, fromId: from, intoId: into }, at(monday))
    await mergeCustomers(counter, { ...merge, fromVersion: 2, fromId: into, intoId: last }, at(monday))
    expect(await names('tamsyn')).toEqual(['T. Rook'])
    const [outer] = (await seeCustomer(owner, last)).merges
    const [inner] = (await seeCustomer(owner, into)).merges
    expect((await refusalOf(undoMerge(owner, { mergeId: inner?.id ?? '' }, at(monday)))).code).toBe('wrong-state')
    await undoMerge(owner, { mergeId: outer?.id ?? '' }, at(monday))
    await undoMerge(owner, { mergeId: inner?.id ?? '' }, at(monday))
    expect([await ownerOf(first.number), await ownerOf(second.number), await ownerOf(third.number)]).toEqual([
      into,
      from,
      last,
    ])
    const self = mergeCustomers(counter, { ...merge, fromId: from, intoId: from }, at(monday))
    expect((await refusalOf(self)).code).toBe('invalid')
    const stale = mergeCustomers(counter, { ...merge, fromId: from, intoId: into }, at(monday))
    expect((await refusalOf(stale)).code).toBe('conflict')
  })

  it('is blanked by the owner once nothing is open or owed, with what was merged into it', async () => {
    const { client, first, second, into, from } = await shop()
    await mergeCustomers(counter, { ...merge, fromId: from, intoId: into }, at(monday))
    const asked = { customerId: into, version: 2, reason: 'asked by letter', confirmed: true } as const
    expect((await refusalOf(blankCustomer(counter, asked, at(monday)))).code).toBe('not-allowed')
    expect((await refusalOf(blankCustomer(owner, asked, at(monday)))).message).toMatch(/still here/)
    await client.visitPlace.updateMany({ data: { whereabouts: 'handed over' } })
    await client.job.updateMany({ where: { id: first.jobId }, data: { dueMinor: 1 } })
    expect((await refusalOf(blankCustomer(owner, asked, at(monday)))).message).toMatch(/owed/)
    await client.job.updateMany({ data: { dueMinor: 0, note: 'Ring Mrs Rook first' } })
    await client.visit.updateMany({ data: { ownedBy: 'Jo Rook' } })
    const somebody = { ...contact, name: 'Ansel Whitby', phone: '' }
    const other = await book({ customer: somebody, heads: [head({ ownedBy: 'his father' })], note: 'Ring him first' })
    await blankCustomer(owner, asked, at(monday))
    const notes = await client.job.findMany({ include: { visits: true }, orderBy: { number: 'asc' } })
    expect(notes.map(({ note, visits }) => [note, ...visits.map(({ ownedBy }) => ownedBy)])).toEqual([
      ['', ''],
      ['', ''],
      ['Ring him first', 'his father'],
    ])
    expect(notes.map(({ number }) => number)).toEqual([first.number, second.number, other.number])
    const contacts = await client.customerContact.findMany({ where: { NOT: { name: somebody.name } } })
    expect(contacts.map(({ name, phone, phoneDigits }) => [name, phone, phoneDigits])).toEqual([
      ['Removed on request', '', ''],
      ['Removed on request', '', ''],
    ])
    expect(await client.customerText.count()).toBe(1)
    expect(await names('rook')).toEqual([])
    expect(JSON.stringify([...contacts, ...(await client.auditEntry.findMany())])).not.toMatch(/Rook|0199|0139/)
    expect((await seeCustomer(owner, into)).jobs.map(({ number }) => number)).toContain(second.number)
    expect((await refusalOf(blankCustomer(owner, { ...asked, version: 3 }, at(monday)))).code).toBe('wrong-state')
  })
})
