import { describe, expect, it } from 'vitest'
import { readMarks } from '../../../lib/core/straightness/vendor-marks'

const none = { flatIn: null, angleIn: null, angleDeg: null, edge: null }

describe('a vendor’s marks', () => {
  it.each([
    ['20 + 63', { flatIn: 0.02, angleIn: 0.063 }],
    ['0.020/0.063', { flatIn: 0.02, angleIn: 0.063 }],
    ['.020 / .063', { flatIn: 0.02, angleIn: 0.063 }],
    ['0,020 + 0,063', { flatIn: 0.02, angleIn: 0.063 }],
    ['20 thou and 63 thou', { flatIn: 0.02, angleIn: 0.063 }],
    ['20/64', { flatIn: 0.02, angleIn: 0.064 }],
    ['63 angle; 20 flat', { flatIn: 0.02, angleIn: 0.063 }],
    ['63 thou at the exhaust edge', { angleIn: 0.063, edge: 'exhaust' }],
    ['.063 EX', { angleIn: 0.063, edge: 'exhaust' }],
    ['63 EX', { angleIn: 0.063, edge: 'exhaust' }],
    ['20 flat, 63 at the intake edge', { flatIn: 0.02, angleIn: 0.063, edge: 'intake' }],
    ['20 + 63 intake', { flatIn: 0.02, angleIn: 0.063, edge: 'intake' }],
    ['1°', { angleDeg: 1 }],
    ['0.5 deg', { angleDeg: 0.5 }],
    ['20 + 0.6°', { flatIn: 0.02, angleDeg: 0.6 }],
    ['flat 0.5 mm', { flatIn: 0.5 / 25.4 }],
  ] as const)('“%s”', (text, wanted) => {
    const read = readMarks(text)
    expect(read.ok && read.value).toEqual({ ...none, ...wanted })
  })

  it.each([
    ['63', 'ambiguous'], // flat or angle?
    ['.063', 'ambiguous'],
    ['1/64', 'ambiguous'], // a fraction of an inch, or two parts?
    ['3/32 flat', 'ambiguous'],
    ['B7 63', 'unreadable'],
    ['none', 'unreadable'],
    ['', 'unreadable'],
    ['20 + 63 + 5', 'ambiguous'],
    ['20 flat + 63 flat', 'unreadable'],
    ['20 intake + 63 exhaust', 'unreadable'],
    ['9°', 'unreadable'], // no head is cut that far
    ['0.9 in flat', 'unreadable'],
    ['63 IN', 'unreadable'], // 63 inches, or the intake edge
    ['-20 flat', 'unreadable'],
    ['fixture 63', 'unreadable'],
  ] as const)('“%s” is refused: %s', (text, code) => {
    expect(readMarks(text)).toMatchObject({ ok: false, refusal: { code } })
  })
})
