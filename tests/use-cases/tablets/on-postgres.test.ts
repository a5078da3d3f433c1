import { expect, test } from 'vitest'
import { seedShop } from '@/lib/demo/shop'
import { enrolTablet } from '@/lib/use-cases/tablets/enrol-tablet'
import { makeTabletCode } from '@/lib/use-cases/tablets/make-tablet-code'
import { revokeTablet } from '@/lib/use-cases/tablets/revoke-tablet'
import { seeTablets } from '@/lib/use-cases/tablets/see-tablets'
import { testDatabase } from '../../setup/database'
import { now } from '../people/staff'
import { enrolled, pinOf, sessionAt, signInAt, whoIs } from './enrolled'

/** PostgreSQL runs these side by side, where SQLite takes one after the other. */
test('on PostgreSQL: one code one tablet, guesses at once are slowed, revoking ends its sessions', async () => {
  await testDatabase('postgresql')
  const { orla, dov } = await seedShop(now)
  const { code } = await makeTabletCode(orla, { name: 'Tablet', station: 'wash' }, { now })
  const answers = await Promise.allSettled(Array.from({ length: 6 }, () => enrolTablet({ code }, { now })))
  expect(answers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
  const device = await enrolled(orla, 'Tablet at the mill')
  const session = await sessionAt(device, dov, pinOf('dov'))
  const guesses = await Promise.all(Array.from({ length: 12 }, () => signInAt(device.token, dov, '999998')))
  const lookedAt = guesses.filter(({ kind }) => kind === 'wrong').length
  expect(lookedAt).toBeGreaterThan(0)
  expect(lookedAt).toBeLessThanOrEqual(3)
  expect(await whoIs(session, device.token)).toMatchObject({ name: 'Dov Marrick', roles: ['machinist'] })
  await revokeTablet(orla, { tabletId: device.tabletId }, { now })
  expect(await whoIs(session, device.token)).toBeNull()
  expect((await seeTablets(orla)).rows.map(({ revoked }) => revoked)).toEqual([false, true])
})
