import { describe, expect, it } from 'vitest'
import { askingAddress, countedAddress } from '@/lib/core/access/address'
import { browserWords } from '@/lib/core/access/browser'
import { areTriesForgotten, signInPauseMs, signInWaitMs, tryKinds } from '@/lib/core/access/sign-in-limits'

const now = new Date('2026-03-02T15:00:00Z')
const ago = (ms: number): Date => new Date(now.getTime() - ms)

describe('the pause after wrong tries', () => {
  // By hand: five are free, then 15 s, 30 s, 60 s, 120 s, 240 s, 480 s, and 960 s is more than the 900 s there can be.
  it('is nothing for the first, then doubles from 15 s to a quarter of an hour', () => {
    const pausesS = Array.from({ length: 13 }, (_, wrong) => signInPauseMs('here', wrong) / 1000)
    expect(pausesS).toEqual([0, 0, 0, 0, 0, 15, 30, 60, 120, 240, 480, 900, 900])
  })

  it('is an hour at the most for codes, and comes later for a browser that is known, an address, a name', () => {
    expect(signInPauseMs('factor', 60)).toBe(3_600_000)
    for (const [kind, free] of [
      ['device', 10],
      ['own', 10],
      ['address', 30],
      ['name', 30],
    ] as const) {
      expect([kind, signInPauseMs(kind, free - 1), signInPauseMs(kind, free)]).toEqual([kind, 0, 15_000])
    }
  })

  it('is the longest for what is no number', () => {
    for (const kind of tryKinds) expect(signInPauseMs(kind, Number.NaN)).toBeGreaterThanOrEqual(900_000)
    expect(signInPauseMs('here', -1)).toBe(900_000)
  })
})

describe('the wait', () => {
  it('counts from the last try, and a clock that was set back makes it no longer than the pause', () => {
    expect(signInWaitMs('here', null, now)).toBe(0)
    expect(signInWaitMs('here', { wrong: 5, lastAt: ago(5_000) }, now)).toBe(10_000)
    expect(signInWaitMs('here', { wrong: 5, lastAt: ago(15_000) }, now)).toBe(0)
    expect(signInWaitMs('here', { wrong: 5, lastAt: ago(-3_600_000) }, now)).toBe(15_000)
  })

  it('is forgotten a day after the last try', () => {
    const day = 24 * 60 * 60 * 1000
    expect(areTriesForgotten({ wrong: 9, lastAt: ago(day) }, now)).toBe(false)
    expect(areTriesForgotten({ wrong: 9, lastAt: ago(day + 1) }, now)).toBe(true)
  })
})

describe('an address', () => {
  it.each([
    ['10.0.0.7', '10.0.0.7'],
    ['::ffff:10.0.0.7', '10.0.0.7'],
    ['::1', '::1'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
    ['2001:0DB8:0001:0002::9', '2001:db8:1:2::/64'],
    ['fe80::1%eth0', 'fe80:0:0:0::/64'],
    ['999.1.1.1', 'unknown'],
    ['', 'unknown'],
    ['"; drop', 'unknown'],
  ])('%s is counted as %s', (text, counted) => {
    expect(countedAddress(text)).toBe(counted)
  })

  it('is that of the connection, whatever a header says, unless the connection is a proxy that the shop names', () => {
    expect(askingAddress('10.0.0.3', '6.6.6.6', [])).toBe('10.0.0.3')
    expect(askingAddress('10.0.0.3', '6.6.6.6', ['10.0.0.2'])).toBe('10.0.0.3')
    expect(askingAddress('::ffff:10.0.0.2', '10.0.0.9', ['10.0.0.2'])).toBe('10.0.0.9')
  })

  it('is the last one that a proxy of the shop did not write about another: what was sent along counts for nothing', () => {
    expect(askingAddress('10.0.0.2', '6.6.6.6, 10.0.0.9', ['10.0.0.2'])).toBe('10.0.0.9')
    expect(askingAddress('10.0.0.2', '6.6.6.6, 10.0.0.9, 10.0.0.4', ['10.0.0.2', '10.0.0.4'])).toBe('10.0.0.9')
    expect(askingAddress('10.0.0.2', '', ['10.0.0.2'])).toBe('10.0.0.2')
  })
})

it('what a browser says it is, in a few words', () => {
  const chrome = 'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 Chrome/141.0.0.0 Safari/537.36'
  expect(browserWords(chrome)).toBe('Chrome on Linux')
  expect(browserWords(chrome.replace('X11; Linux x86_64', 'Windows NT 10.0').concat(' Edg/141.0'))).toBe(
    'Edge on Windows',
  )
  expect(browserWords('Mozilla/5.0 (iPad; CPU OS 18) AppleWebKit/605 Version/18 Safari/604')).toBe('Safari on iPad')
  expect(browserWords('<script>')).toBe('A browser')
})
