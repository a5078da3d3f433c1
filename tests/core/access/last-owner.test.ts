import { describe, expect, test } from 'vitest'
import { keepsAnOwner, type Standing } from '@/lib/core/access/last-owner'

const ada: Standing = { personId: 'ada', roles: ['owner'], retired: false }
const ben: Standing = { personId: 'ben', roles: ['machinist'], retired: false }
const cyd: Standing = { personId: 'cyd', roles: ['owner', 'counter'], retired: true }

describe('the last owner', () => {
  test('cannot be retired', () => {
    expect(keepsAnOwner([ada, ben], { ...ada, retired: true }).ok).toBe(false)
  })
  test('cannot be demoted', () => {
    expect(keepsAnOwner([ada, ben], { ...ada, roles: ['machinist'] }).ok).toBe(false)
  })
  test('is the last even when a retired person once was an owner', () => {
    expect(keepsAnOwner([ada, ben, cyd], { ...ada, retired: true }).ok).toBe(false)
  })
})

describe('what leaves an owner is allowed', () => {
  test('a second owner steps back', () => {
    const second: Standing = { ...ben, roles: ['owner'] }
    expect(keepsAnOwner([ada, second], { ...ada, roles: ['counter'] }).ok).toBe(true)
  })
  test('the last owner takes on another role', () => {
    expect(keepsAnOwner([ada, ben], { ...ada, roles: ['owner', 'machinist'] }).ok).toBe(true)
  })
  test('somebody else is retired', () => {
    expect(keepsAnOwner([ada, ben], { ...ben, retired: true }).ok).toBe(true)
  })
})
