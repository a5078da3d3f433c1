import { describe, expect, test } from 'vitest'
import { differences, merged, versionsIn } from '@/app/_components/form/differences'

const opened = {
  version: 1,
  name: 'Yard',
  roles: ['counter'],
  figures: { any: { width: '6.0', length: '' } },
}

describe('what differs', () => {
  test('is named by its path; the version aside', () => {
    const now = { ...opened, version: 2, name: 'Yard 2', figures: { any: { width: '6.0', length: '20' } } }
    expect(differences(opened, now)).toEqual([
      { path: 'name', now: 'Yard 2' },
      { path: 'figures.any.length', now: '20' },
    ])
  })
  test('a field that was never filled is the same as an empty one', () => {
    expect(differences({ any: {} }, { any: { width: '' } })).toEqual([])
  })
  test('a list is one thing', () => {
    expect(differences({ bolts: [] }, { bolts: [{ label: '1', blind: true }] })).toEqual([
      { path: 'bolts', now: '1, true' },
    ])
  })
})

describe('keeping yours', () => {
  test('keeps what you changed and takes theirs for the rest', () => {
    const yours = { ...opened, name: 'My yard' }
    const theirs = {
      ...opened,
      version: 2,
      roles: ['counter', 'owner'],
      figures: { any: { width: '6.1', length: '' } },
    }
    expect(merged(opened, yours, theirs)).toEqual({
      version: 2,
      name: 'My yard',
      roles: ['counter', 'owner'],
      figures: { any: { width: '6.1', length: '' } },
    })
  })
  test('is yours where both changed the same', () => {
    expect(merged(opened, { ...opened, name: 'Mine' }, { ...opened, name: 'Theirs' }).name).toBe('Mine')
  })
  test('is yours where you emptied a field', () => {
    const yours = { ...opened, figures: { any: { width: '', length: '' } } }
    expect(merged(opened, yours, opened).figures.any.width).toBe('')
  })
})

describe('records in a list', () => {
  const job = { version: 3, heads: [1, 2].map((at) => ({ visitId: `v${at}`, version: at, target: '60', side: '' })) }
  const theirs = {
    version: 3,
    heads: [
      { visitId: 'v1', version: 1, target: '60', side: '' },
      { visitId: 'v2', version: 5, target: '59', side: 'left' },
    ],
  }
  test('are told apart by their place', () => {
    expect(differences(job, theirs)).toEqual([
      { path: 'heads.1.target', now: '59' },
      { path: 'heads.1.side', now: 'left' },
    ])
  })
  test('are merged field by field, and take the versions of the others', () => {
    const yours = { ...job, heads: job.heads.map((head) => ({ ...head, target: '58' })) }
    expect(merged(job, yours, theirs).heads).toEqual([
      { visitId: 'v1', version: 1, target: '58', side: '' },
      { visitId: 'v2', version: 5, target: '58', side: 'left' },
    ])
  })
  test('have versions of their own', () => {
    expect(versionsIn(theirs)).toEqual([3, 1, 5])
  })
})
