import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { backupState, hoursSince, isNightlyDue } from '@/lib/core/backup/due'
import { backupKinds, backupsToKeep, type DatedBackup } from '@/lib/core/backup/keep'

const dayMs = 24 * 60 * 60 * 1000
const at = (text: string): number => Date.parse(text)
const nightly = (text: string): DatedBackup => ({ kind: 'nightly', atMs: at(text) })
const dayText = ({ atMs }: DatedBackup): string => new Date(atMs).toISOString().slice(0, 10)

/** As a shop has them after these nights: each night one more, then what may go is removed. */
function afterNights(first: string, nights: number, each: (kept: DatedBackup[], night: number) => void = () => {}) {
  let kept: DatedBackup[] = []
  for (let night = 0; night < nights; night++) {
    kept = backupsToKeep([...kept, { kind: 'nightly', atMs: at(first) + night * dayMs }])
    each(kept, night)
  }
  return kept
}

describe('which backups are kept', () => {
  it('a year of nightly backups: 7 days, 4 weeks, 12 months, by a calendar on the wall', () => {
    const kept = afterNights('2026-01-01T02:10:00Z', 365)
    // 31 December 2026 is a Thursday. Days: 25 to 31. Weeks: this one's newest is the 31st, then the Sundays 27, 20 and 13
    // December. Months: the 31st for December, then the last day of each of the eleven months before it.
    expect(kept.map(dayText)).toEqual([
      ...['2026-12-31', '2026-12-30', '2026-12-29', '2026-12-28', '2026-12-27', '2026-12-26', '2026-12-25'],
      ...['2026-12-20', '2026-12-13'],
      ...['2026-11-30', '2026-10-31', '2026-09-30', '2026-08-31', '2026-07-31', '2026-06-30', '2026-05-31'],
      ...['2026-04-30', '2026-03-31', '2026-02-28', '2026-01-31'],
    ])
  })

  it('on every day of that year: never more than 23, the last seven nights, and something near each month before', () => {
    afterNights('2026-01-01T02:10:00Z', 365, (kept, night) => {
      const agesDays = kept.map(({ atMs }) => night - (atMs - at('2026-01-01T02:10:00Z')) / dayMs)
      expect(kept.length).toBeLessThanOrEqual(7 + 4 + 12)
      for (let age = 0; age <= Math.min(6, night); age++) expect(agesDays).toContain(age)
      // Whatever age is looked for, up to what was there: a backup not more than 31 days older stands.
      for (let wanted = 0; wanted <= Math.min(night, 330); wanted += 10) {
        const next = Math.min(...agesDays.filter((age) => age >= Math.min(wanted, Math.max(...agesDays))))
        expect(next - wanted).toBeLessThanOrEqual(31)
      }
    })
  })

  it('several in one day count as one: the newest', () => {
    const kept = backupsToKeep([
      ...[nightly('2026-03-04T01:00:00Z'), nightly('2026-03-04T23:59:00Z'), nightly('2026-03-05T00:01:00Z')],
    ])
    expect(kept).toEqual([nightly('2026-03-05T00:01:00Z'), nightly('2026-03-04T23:59:00Z')])
  })

  it('a shop that was closed for years keeps what it had when it closed', () => {
    const old = afterNights('2023-01-01T02:10:00Z', 40)
    const kept = backupsToKeep([...old, nightly('2026-03-04T02:10:00Z')])
    expect(kept.length).toBeGreaterThanOrEqual(7)
    expect(kept.map(dayText)).toContain('2023-02-09')
  })

  it('those made by hand and before an update do not push out the nights, nor the nights them', () => {
    const byHand = Array.from({ length: 9 }, (_, n): DatedBackup => ({ kind: 'by-hand', atMs: at('2026-03-04') + n }))
    const update: DatedBackup = { kind: 'before-update', atMs: at('2025-01-01') }
    const nights = afterNights('2026-02-01T02:10:00Z', 31)
    const kept = backupsToKeep([update, ...byHand, ...nights])
    expect(kept.filter(({ kind }) => kind === 'nightly')).toEqual(nights)
    expect(kept.filter(({ kind }) => kind === 'by-hand')).toEqual(byHand.slice(4).reverse())
    expect(kept).toContain(update)
  })

  it('any backups: the newest stays, keeping twice keeps the same, and the order they came in does not matter', () => {
    const backups = fc.array(
      fc.record({ kind: fc.constantFrom(...backupKinds), atMs: fc.integer({ min: 0, max: 4_000_000_000_000 }) }),
      { maxLength: 60 },
    )
    fc.assert(
      fc.property(backups, (all) => {
        const kept = backupsToKeep(all)
        expect(backupsToKeep(kept)).toEqual(kept)
        expect(backupsToKeep(all.toReversed()).map(({ atMs }) => atMs)).toEqual(kept.map(({ atMs }) => atMs))
        expect(kept.every((one) => all.includes(one))).toBe(true)
        if (all.length > 0) expect(kept[0]?.atMs).toBe(Math.max(...all.map(({ atMs }) => atMs)))
      }),
    )
  })
})

describe('when the nightly backup is due', () => {
  const made = at('2026-03-04T02:10:00Z')
  it.each([
    ['none yet', null, '2026-03-04T14:00:00Z', 14, true],
    ['the same night', made, '2026-03-04T03:10:00Z', 3, false],
    ['the same day', made, '2026-03-04T14:00:00Z', 14, false],
    ['the next night', made, '2026-03-05T02:05:00Z', 2, true],
    ['the next morning after a night switched off, 26 h on', made, '2026-03-05T04:10:00Z', 8, true],
    ['not at five in the morning, 25 h on', made, '2026-03-05T03:10:00Z', 5, false],
    ['the last one lies in the future: the clock was wrong', made, '2026-03-03T14:00:00Z', 14, true],
  ])('%s', (_, last, now, hour, due) => {
    expect(isNightlyDue(last, at(now), hour)).toBe(due)
  })

  it('looked at every twenty minutes for a year, with a day of 23 and one of 25 hours: once a night', () => {
    let last: number | null = null
    const made: number[] = []
    const clock = new Intl.DateTimeFormat('en-GB', { timeZone: 'America/Chicago', hour: '2-digit' })
    const hourAt = (ms: number): number => Number(clock.format(ms))
    for (let now = at('2026-01-01T12:00:00Z'); now < at('2027-01-01T12:00:00Z'); now += 20 * 60 * 1000) {
      if (!isNightlyDue(last, now, hourAt(now))) continue
      made.push(now)
      last = now
    }
    expect(made).toHaveLength(1 + 365) // the first at once, then every night
  })
})

describe('how old a backup is', () => {
  const now = at('2026-03-04T12:00:00Z')
  it('is red after two days', () => {
    expect(backupState(null, now)).toBe('none')
    expect(backupState(at('2026-03-02T13:00:00Z'), now)).toBe('good') // 47 h
    expect(backupState(at('2026-03-02T12:00:00Z'), now)).toBe('good') // 48 h
    expect(backupState(at('2026-03-02T11:59:00Z'), now)).toBe('old')
    expect(hoursSince(at('2026-03-04T09:01:00Z'), now)).toBe(2)
    expect(hoursSince(at('2026-03-04T13:00:00Z'), now)).toBe(0)
  })
})
