import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { headName, isTag, parseTag, tagOf, tagText } from '@/lib/core/shop/tag-number'

describe('tag numbers', () => {
  it.each([
    ['412', 'T-0412', 412],
    ['t-412', 'T-0412', 412],
    ['T0412', 'T-0412', 412],
    [' T-12345 ', 'T-12345', 12345],
    ['blue-7', 'BLUE-7', 7],
    ['AB', 'AB', 0],
  ])('%j reads as %s', (text, number, sortNumber) => {
    expect(parseTag(text)).toEqual({ ok: true, value: { number, sortNumber } })
  })

  it.each(['', '-4', 'T 04 12', '12345678901234567', 'ä1', 'a/b'])('refuses %j', (text) => {
    expect(parseTag(text)).toMatchObject({ ok: false, refusal: { code: 'unreadable' } })
  })

  it('reads every running number back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), (running) => {
        const number = tagOf(running)
        expect(number).toMatch(/^T-\d{4,}$/)
        expect(parseTag(number)).toEqual({ ok: true, value: { number, sortNumber: running } })
      }),
    )
  })

  it('takes the tag out of its link', () => {
    expect(tagText('http://192.0.2.7:3000/t/T-0412')).toBe('T-0412')
    expect(tagText(' https://heads.example/t/BLUE-7/ ')).toBe('BLUE-7')
    expect(tagText('/192.0.2.7:3000/t/T-0412')).toBe('T-0412')
    expect(tagText('T-0412')).toBe('T-0412')
    expect(tagText('https://heads.example/jobs/26-0001')).toBe('https://heads.example/jobs/26-0001')
  })
})

describe('what a head is called', () => {
  const tag = (number: string, off = false) => ({ number, to: off ? new Date(0) : null })
  it.each([
    ['the tag it wears', [tag('T-0401', true), tag('T-0412')], 'T-0412'],
    ['the last it wore', [tag('T-0401', true), tag('T-0412', true)], 'T-0412'],
    ['its place on the job while it has none', [], '26-0117 head 2'],
  ])('%s', (_, tags, name) => {
    expect(headName(tags, '26-0117', 2)).toBe(name)
  })

  it('is a tag only when it could be one', () => {
    expect(['T-0412', 'BLUE-7'].map(isTag)).toEqual([true, true])
    expect(['', '26-0117 head 2'].map(isTag)).toEqual([false, false])
    // No tag that can be typed is taken for a name.
    expect(parseTag('26-0117 head 2').ok).toBe(false)
  })
})
