import { beforeEach, describe, expect, it } from 'vitest'
import { actorOfSession, endSession, openSession } from '@/lib/data/sessions'
import { testDatabase, type TestDatabase } from '../setup/database'

const hourMs = 60 * 60 * 1000
const start = new Date('2026-03-02T15:00:00Z')
const after = (hours: number) => new Date(start.getTime() + hours * hourMs)

let database: TestDatabase
let session = ''

beforeEach(async () => {
  database = await testDatabase()
  await database.client.person.create({
    data: {
      id: 'p',
      name: 'Ada Quill',
      signIn: 'ada',
      passwordHash: '',
      roles: 'machinist,counter',
      grants: 'waive',
      createdAt: start,
    },
  })
  session = await openSession('p', start)
})

describe('a session', () => {
  it('is the person with all their roles and grants', async () => {
    expect(await actorOfSession(session, after(1))).toEqual({
      personId: 'p',
      name: 'Ada Quill',
      roles: ['machinist', 'counter'],
      grants: ['waive'],
    })
  })

  it('ends when nothing was asked for twelve hours, and not before', async () => {
    expect(await actorOfSession(session, after(12))).not.toBeNull()
    expect(await actorOfSession(session, after(24.01))).toBeNull()
  })

  it('is kept up by what is asked: twelve hours count from the last', async () => {
    for (const hours of [10, 20, 30]) expect(await actorOfSession(session, after(hours)), String(hours)).not.toBeNull()
    expect(await actorOfSession(session, after(42.1))).toBeNull()
  })

  it('ends after a week, however much was asked', async () => {
    for (let hours = 11; hours < 7 * 24; hours += 11) {
      expect(await actorOfSession(session, after(hours)), String(hours)).not.toBeNull()
    }
    expect(await actorOfSession(session, after(7 * 24))).toBeNull()
  })

  it('is nobody’s when the person is retired, ended or not', async () => {
    await database.client.person.update({ where: { id: 'p' }, data: { retiredAt: start } })
    expect(await actorOfSession(session, after(1))).toBeNull()
  })

  it('that was ended, or never was, is nobody’s', async () => {
    await endSession(session, 'signed out', after(1))
    expect(await actorOfSession(session, after(1))).toBeNull()
    expect(await actorOfSession('never', after(1))).toBeNull()
  })
})
