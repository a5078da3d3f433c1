import { beforeAll, describe, expect, it, vi } from 'vitest'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { logCall } from '@/lib/use-cases/jobs/log-call'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { revokeCustomerLink } from '@/lib/use-cases/links/revoke-customer-link'
import { seeByLink, specByLink } from '@/lib/use-cases/links/see-by-link'
import { seeLinks } from '@/lib/use-cases/links/see-links'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import type { TestDatabase } from '@/tests/setup/database'
import { at, counter, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { bookAnother, shopReadyToRelease, versionOf } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 240_000 })

const day = 24 * 60 * 60 * 1000
const tokenOf = ({ path }: { path: string }): string => path.slice('/s/'.length)

describe('a customer’s link', () => {
  let database: TestDatabase
  let ready: Awaited<ReturnType<typeof shopReadyToRelease>>
  let other: Awaited<ReturnType<typeof bookAnother>>
  const make = (jobId: string, op?: string) => makeCustomerLink(counter, { jobId }, at(monday, op))

  beforeAll(async () => {
    ready = await shopReadyToRelease()
    database = ready.database
    other = await bookAnother({ pricesOnLink: true })
  })

  it('is kept as a hash only, also in the answer that is kept of the operation', async () => {
    const token = tokenOf(await make(ready.job.jobId, 'op-link'))
    // 192 bits are 32 letters of base64.
    expect(token).toMatch(/^[\w-]{32}$/)
    const kept = JSON.stringify([
      await database.client.customerLink.findMany(),
      await database.client.operation.findMany(),
      await database.client.auditEntry.findMany(),
    ])
    expect(kept).not.toContain(token)
    expect((await refusalOf(make(ready.job.jobId, 'op-link'))).message).toMatch(/shown only once/)
    expect(await database.client.customerLink.count({ where: { jobId: ready.job.jobId } })).toBe(1)
  })

  it('is made and revoked at the counter only', async () => {
    const { linkId } = await make(ready.job.jobId)
    expect((await refusalOf(makeCustomerLink(machinist, { jobId: ready.job.jobId }, at(monday)))).code).toBe(
      'not-allowed',
    )
    expect((await refusalOf(revokeCustomerLink(machinist, { linkId }, at(monday)))).code).toBe('not-allowed')
    expect((await refusalOf(seeLinks(machinist, ready.job.number, monday))).code).toBe('not-allowed')
    const row = await database.client.customerLink.findUniqueOrThrow({ where: { id: linkId } })
    expect(row.revokedAt).toBeNull()
  })

  it('shows where the heads are, and nothing that is not the customer’s', async () => {
    await reportFinding(
      machinist,
      { visitId: ready.second.visitId, stepId: null, what: 'secret crack, not asked yet' },
      at(monday),
    )
    await logCall(counter, { jobId: ready.job.jobId, text: 'call log: he argued' }, at(monday))
    const view = await seeByLink(tokenOf(await make(ready.job.jobId)), monday)
    expect(view).toMatchObject({
      jobNumber: ready.job.number,
      promiseOn: '2026-03-20',
      account: null,
      questions: [],
    })
    expect(view.heads.map((head) => head.tag)).toEqual([ready.first.tag, ready.second.tag])
    const all = JSON.stringify(view)
    for (const secret of [
      'internal',
      'secret crack',
      'call log',
      '9550',
      '95.50',
      other.number,
      ...other.heads.map(({ tag }) => tag),
    ]) {
      expect(all).not.toContain(secret)
    }
  })

  it('shows prices only where the shop said so for this job', async () => {
    const view = await seeByLink(tokenOf(await make(other.jobId)), monday)
    expect(view.account).toMatchObject({ totalMinor: 19100, balance: { code: 'to-pay', minor: 19100 } })
  })

  it('opens the spec sheet once the head is released, and of no other job', async () => {
    const mine = tokenOf(await make(ready.job.jobId))
    const theirs = tokenOf(await make(other.jobId))
    const { visitId } = ready.first
    expect((await refusalOf(specByLink(mine, visitId, monday))).code).toBe('not-found')
    await releaseVisit(owner, { visitId, version: await versionOf(visitId), reason: '' }, at(monday))
    const view = await seeByLink(mine, monday)
    expect(view.heads.map((head) => head.spec?.tag ?? null)).toEqual([ready.first.tag, null])
    expect(view.heads[0]?.where).toBe('It is ready for you.')
    const { bytes } = await specByLink(mine, visitId, monday)
    expect(Buffer.from(bytes.slice(0, 5)).toString()).toBe('%PDF-')
    const foreign = await refusalOf(specByLink(theirs, visitId, monday))
    const unknown = await refusalOf(specByLink(theirs, '019caed9-4300-7000-8000-0000000000ff', monday))
    expect(foreign).toEqual(unknown)
    expect(JSON.stringify(await seeByLink(theirs, monday))).not.toContain(ready.first.tag)
  })

  it('dies in one way, whatever it died of', async () => {
    const made = await make(ready.job.jobId)
    const token = tokenOf(made)
    const newer = tokenOf(await make(ready.job.jobId))
    const lastDay = new Date(monday.getTime() + 180 * day - 1)
    expect((await seeByLink(token, lastDay)).jobNumber).toBe(ready.job.number)
    const expired = await refusalOf(seeByLink(token, new Date(monday.getTime() + 180 * day)))
    await revokeCustomerLink(counter, { linkId: made.linkId }, at(monday))
    await revokeCustomerLink(counter, { linkId: made.linkId }, at(monday))
    const revoked = await refusalOf(seeByLink(token, monday))
    const unknown = await refusalOf(seeByLink('A'.repeat(32), monday))
    const malformed = await refusalOf(seeByLink('../../etc', monday))
    const paper = await refusalOf(specByLink(token, ready.first.visitId, monday))
    for (const dead of [revoked, unknown, malformed, paper]) expect(dead).toEqual(expired)
    expect(expired.code).toBe('not-found')
    expect((await seeByLink(newer, monday)).jobNumber).toBe(ready.job.number)
    const states = (await seeLinks(counter, ready.job.number, monday)).links.map((link) => [link.id, link.state])
    expect(states).toContainEqual([made.linkId, 'revoked'])
  })
})
