import { describe, expect, it } from 'vitest'
import { fold, foldedWords, partsAsked, textToFind } from '@/lib/core/find/fold'
import { jobNumbersAsked } from '@/lib/core/find/job-asked'
import { phoneFigures } from '@/lib/core/find/phone-asked'
import { customerText, headText, nameInOrder } from '@/lib/core/find/texts'
import { phoneCountry } from '@/lib/core/shop/country'

describe('what is kept to find by', () => {
  it.each([
    ['Ann-Marie  O’Neil', ['ann', 'marie', 'o', 'neil']],
    ['ŁUKASZ Böhm', ['lukasz', 'bohm']],
    ['Straße 7b', ['strasse', '7b']],
    ['  ', []],
  ])('the words of %j', (text, words) => {
    expect(foldedWords(text)).toEqual(words)
  })

  it('letters with an accent in one sign and in two are the same', () => {
    expect(fold('\u00e9')).toBe(fold('e\u0301'))
    expect(fold('\u00e9')).toBe('e')
  })

  it('each word after a space, the field run together, umlauts written out, each once', () => {
    expect(textToFind(['Ann-Marie Böhm', 'x', 'x'])).toBe(' ann marie bohm annmariebohm boehm annmarieboehm x')
    expect(textToFind(['', ' - '])).toBe('')
  })

  it('of a customer, and of a head', () => {
    const none = { email: '', phoneE164: '', phoneDigits: '', otherPhoneE164: '', otherPhoneDigits: '' }
    const text = customerText([{ ...none, name: 'Ada Rook', phoneE164: '+442079460123', phoneDigits: '02079460123' }])
    expect(text).toBe(' ada rook adarook 02079460123 442079460123')
    expect(headText({ stamp: 'TR 1', marks: 'HX-2', casting: 'Halden 4' })).toBe(' tr 1 tr1 hx 2 hx2 halden 4 halden4')
    expect(nameInOrder('Ada  BÖHM')).toBe('ada bohm')
  })
})

describe('what is asked for', () => {
  it.each([
    ['Böhm an', ['bohm', ' an']],
    ['o’neil', ['oneil']],
    ['-- ', []],
    ['x x', [' x']],
    ['ann lee-d', ['ann', 'leed']],
  ])('%j is parted', (asked, parts) => {
    expect(partsAsked(asked)).toEqual(parts)
  })

  it('a number in any form', () => {
    expect(phoneFigures('+1 555 0139', '1')).toEqual(['15550139', '5550139'])
    expect(phoneFigures('001 555 0139', '1')).toEqual(['0015550139', '15550139', '5550139'])
    expect(phoneFigures('020 7946 0123', '44')).toEqual(['02079460123', '2079460123'])
    expect(phoneFigures('0139', '1')).toEqual(['0139', '139'])
    expect(phoneFigures('12', '1')).toBeNull()
    expect(phoneFigures('rook 555', '1')).toBeNull()
  })

  it('a job without zeros or dash', () => {
    expect(jobNumbersAsked('26-14')).toEqual(['26-0014'])
    expect(jobNumbersAsked('26 14')).toEqual(['26-0014'])
    expect(jobNumbersAsked('26/0014')).toEqual(['26-0014'])
    expect(jobNumbersAsked('0020')).toContain('26-0020')
    expect(jobNumbersAsked('0020')).toHaveLength(100)
    expect(jobNumbersAsked('260117')[0]).toBe('26-0117')
    expect(jobNumbersAsked('26-12345')).toEqual(['26-12345'])
    expect(jobNumbersAsked('0')).toEqual([])
    expect(jobNumbersAsked('T412')).toEqual([])
  })
})

it('whose numbers are typed without a country’s code', () => {
  expect(phoneCountry({ country: 'FR', locale: 'en-US', currency: 'USD' })).toBe('FR')
  expect(phoneCountry({ country: '', locale: 'en-GB', currency: 'USD' })).toBe('GB')
  expect(phoneCountry({ country: '', locale: 'de', currency: 'CHF' })).toBe('CH')
  expect(phoneCountry({ country: '', locale: 'de', currency: 'EUR' })).toBe('US')
})
