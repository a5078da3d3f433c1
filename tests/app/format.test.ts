import { describe, expect, it } from 'vitest'
import { formatMoney } from '@/lib/core/money/format-money'
import { whenWords } from '@/lib/core/shop/when-words'

const spaces = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ')

describe('money', () => {
  it('moves the point by the currency’s own decimals (ISO 4217: dollar 2, yen 0, Kuwaiti dinar 3)', () => {
    expect(formatMoney(123456, 'USD', 'en-US')).toBe('$1,234.56')
    expect(formatMoney(1234, 'JPY', 'en-US')).toBe('¥1,234')
    expect(spaces(formatMoney(1234567, 'KWD', 'en-US'))).toBe('KWD 1,234.567')
  })

  it('keeps the cents of small and negative amounts', () => {
    expect(formatMoney(5, 'USD', 'en-US')).toBe('$0.05')
    expect(formatMoney(-5, 'USD', 'en-US')).toBe('-$0.05')
    expect(formatMoney(0, 'USD', 'en-US')).toBe('$0.00')
  })

  it('writes as the locale writes', () => {
    expect(spaces(formatMoney(123456, 'EUR', 'de-DE'))).toBe('1.234,56 €')
  })
})

describe('moments', () => {
  it('show in the shop’s zone, whatever the zone of the machine', () => {
    const chicago = { timeZone: 'America/Chicago', locale: 'en-US' }
    const nearMidnight = new Date('2026-03-05T04:30:00Z')
    expect(whenWords(nearMidnight, 'date', chicago)).toBe('Mar 4, 2026')
    expect(whenWords(nearMidnight, 'date', { ...chicago, timeZone: 'Asia/Tokyo' })).toBe('Mar 5, 2026')
    expect(spaces(whenWords(nearMidnight, 'time', chicago))).toBe('10:30 PM')
  })
})
