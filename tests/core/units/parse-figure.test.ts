import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { formatBare, formatFigure, formatThou } from '../../../lib/core/units/format-figure'
import { parseFigure } from '../../../lib/core/units/parse-figure'
import { quantities, quantityNames, unitFamilies, type Quantity } from '../../../lib/core/units/quantities'

const read = (text: string, quantity: Quantity, fieldUnit?: string) => must(parseFigure(text, quantity, fieldUnit))

describe('figures as shops write them', () => {
  it.each<[string, Quantity, number]>([
    ['.3415', 'lift', 0.3415],
    ['0,3415', 'lift', 0.3415],
    [',3415', 'lift', 0.3415],
    ['1/64', 'depth', 1 / 64],
    ['1 / 64', 'depth', 1 / 64],
    ['1 7/8', 'bore', 1.875],
    ['1-7/8', 'bore', 1.875],
    ['1 7/8"', 'bore', 1.875],
    ['−1-7/8 in', 'length', -1.875],
    ['10 thou', 'depth', 0.01],
    ['10thou', 'depth', 0.01],
    ['12 1/2 thou', 'depth', 0.0125],
    ['+.010', 'depth', 0.01],
    ['−.010', 'deckClearance', -0.01],
    ['-.010', 'deckClearance', -0.01],
    ['101.6 mm', 'bore', 4],
    ['101,6 MM', 'bore', 4],
    ['62 cc', 'chamberVolume', 62],
    ['62 ml', 'chamberVolume', 62],
    ['4 in³', 'chamberVolume', 65.548256],
    ['4 cu. in.', 'chamberVolume', 65.548256],
    ['30’', 'angle', 0.5],
    ['0.5 deg', 'angle', 0.5],
    ['68 °F', 'temperature', 20],
    ['28"H2O', 'testPressure', 28],
    ['6.0 thou per cc', 'thouPerCc', 6],
    ['8', 'count', 8],
    ['\u00a00.018\u00a0in ', 'depth', 0.018],
  ])('%j as %s', (text, quantity, value) => {
    expect(read(text, quantity).value).toBeCloseTo(value, 12)
  })

  it('keeps the text as typed, trailing zeros and all', () => {
    expect(read(' 0.3410 ', 'lift')).toMatchObject({ text: '0.3410', unit: 'in', echo: '0.3410 in' })
    expect(read('10 thou', 'depth')).toMatchObject({
      text: '10 thou',
      unit: 'thou',
      echo: '0.0100 in (10 thou)',
    })
  })

  it('a round number of thou is the same double as the inches', () => {
    for (let n = 0; n <= 500; n++) expect(read(`${n} thou`, 'depth').value).toBe(n / 1000)
  })

  it('the unit typed wins over the field’s; a bare figure takes the field’s', () => {
    expect(read('18', 'depth', 'thou').value).toBe(0.018)
    expect(read('18', 'depth', 'thou').echo).toBe('0.0180 in (18 thou)')
    expect(read('0.018 in', 'depth', 'thou').value).toBe(0.018)
    expect(read('.3', 'depth', 'furlong').unit).toBe('in')
  })

  it('minus nothing is nothing', () => {
    expect(Object.is(read('-0', 'deckClearance').value, 0)).toBe(true)
    expect(read('−0.0000', 'deckClearance').echo).toBe('0.0000 in')
  })
})

describe('what could be meant in two ways is asked back', () => {
  it.each<[string, Quantity, string | undefined, string[]]>([
    ['3415', 'lift', undefined, ['0.3415 in', '3415 thou']],
    ['3415', 'thickness', undefined, ['0.3415 in', '3415 thou']],
    ['18', 'depth', undefined, ['0.18 in', '18 thou']],
    ['3.2', 'depth', undefined, ['3.2 thou', '3.2 mm']],
    ['88', 'bore', undefined, ['0.88 in', '88 mm']],
    ['-10', 'deckClearance', undefined, ['-0.10 in', '-10 thou']],
    ['3415', 'depth', 'thou', ['0.3415 in', '3415 thou']],
    ['.018', 'depth', 'thou', ['.018 thou', '.018 in']],
    ['68', 'temperature', undefined, ['68 °C', '68 °F']],
    ['6450', 'area', undefined, ['6450 in²', '6450 mm²']],
    ['30', 'angle', undefined, ['30°', '30 min']],
  ])('%j as %s in %s', (text, quantity, fieldUnit, readings) => {
    const result = parseFigure(text, quantity, fieldUnit)
    expect(result).toMatchObject({ ok: false, refusal: { code: 'ambiguous' } })
    for (const reading of readings) expect(result.ok ? '' : result.refusal.message).toContain(reading)
  })
})

const bad: [string, Quantity, string][] = [
  ['', 'depth', 'unreadable'],
  ['   ', 'depth', 'unreadable'],
  ['.', 'depth', 'unreadable'],
  [',', 'depth', 'unreadable'],
  ['-', 'depth', 'unreadable'],
  ['+', 'depth', 'unreadable'],
  ['abc', 'depth', 'unreadable'],
  ['NaN', 'depth', 'unreadable'],
  ['Infinity', 'depth', 'unreadable'],
  ['1e-3', 'depth', 'unreadable'],
  ['0x1f', 'depth', 'unreadable'],
  ['1/0', 'depth', 'unreadable'],
  ['1/', 'depth', 'unreadable'],
  ['/2', 'depth', 'unreadable'],
  ['1/2/3', 'depth', 'unreadable'],
  ['1 9/8', 'bore', 'unreadable'],
  ['1 7/0', 'bore', 'unreadable'],
  ['5-3', 'bore', 'unreadable'],
  ['1.2.3', 'bore', 'unreadable'],
  ['3 415', 'bore', 'unreadable'],
  ['--1', 'deckClearance', 'unreadable'],
  ['1½', 'bore', 'unreadable'],
  ['4 ft', 'bore', 'unreadable'],
  ['4 constructor', 'bore', 'unreadable'],
  ['4 __proto__', 'bore', 'unreadable'],
  ['10 cc', 'depth', 'unreadable'],
  ['10 thou', 'chamberVolume', 'unreadable'],
  ['10 %', 'count', 'unreadable'],
  ['٣', 'count', 'unreadable'],
  ['<script>', 'depth', 'unreadable'],
  ['1'.repeat(41), 'depth', 'unreadable'],
  ['1,234,567', 'flow', 'ambiguous'],
  ['1,234.5', 'flow', 'ambiguous'],
  ['1.234,5', 'flow', 'ambiguous'],
  ['-0.1', 'depth', 'out-of-range'],
  ['0.6 in', 'depth', 'out-of-range'],
  ['600 thou', 'depth', 'out-of-range'],
  ['13 in', 'bore', 'out-of-range'],
  ['0.2', 'bore', 'out-of-range'],
  ['640', 'chamberVolume', 'out-of-range'],
  ['0.5', 'chamberVolume', 'out-of-range'],
  ['9'.repeat(40), 'chamberVolume', 'out-of-range'],
  ['2.5', 'count', 'out-of-range'],
  ['13', 'chambers', 'out-of-range'],
  ['0', 'chambers', 'out-of-range'],
  ['-61°', 'valveAngle', 'out-of-range'],
  ['181°', 'bankAngle', 'out-of-range'],
  ['2001', 'flow', 'out-of-range'],
  ['-41', 'temperature', 'out-of-range'],
  ['600 µin', 'finish', 'out-of-range'],
]

describe('what is no figure is refused by name', () => {
  it.each(bad)('%j as %s: %s', (text, quantity, code) => {
    expect(parseFigure(text, quantity)).toMatchObject({ ok: false, refusal: { code } })
  })

  it('there are more than forty of them', () => {
    expect(bad.length).toBeGreaterThan(40)
  })

  it('no text whatever comes back as anything but a plausible number or a refusal in words', () => {
    const figureLike = fc.stringMatching(/^[−+-]?[0-9 .,/-]{0,8}( ?(in|thou|mm|cc|°|"|min))?$/)
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), figureLike),
        fc.constantFrom(...quantityNames),
        fc.option(fc.constantFrom('in', 'thou', 'mm', 'cc', ''), { nil: undefined }),
        (text, quantity, fieldUnit) => {
          const result = parseFigure(text, quantity, fieldUnit)
          if (!result.ok) {
            expect(result.refusal.message.length).toBeGreaterThan(5)
            return
          }
          const { least, most } = quantities[quantity]
          expect(result.value.value).toBeGreaterThanOrEqual(least)
          expect(result.value.value).toBeLessThanOrEqual(most)
          expect(result.value.text).toBe(text.trim())
          expect(result.value.echo).not.toMatch(/NaN|Infinity|undefined/)
        },
      ),
      { numRuns: 3000 },
    )
  })
})

describe('limits of what is plausible', () => {
  // The design's own list; a limit that moves must be moved here on purpose.
  it.each<[Quantity, number, number]>([
    ['chamberVolume', 1, 400],
    ['area', 0.5, 40],
    ['bore', 0.5, 12],
    ['stroke', 0.5, 12],
    ['chambers', 1, 12],
    ['cutDepth', 0, 0.5],
    ['angle', 0, 5],
    ['milledWidth', 1, 20],
    ['thickness', 0.3, 12],
    ['valveDiameter', 0.3, 5],
    ['lift', 0, 2],
    ['valveAngle', -60, 60],
    ['gasket', 0, 0.5],
    ['deckClearance', -0.5, 0.5],
    ['pistonDish', 0, 400],
    ['pistonDome', 0, 200],
    ['land', 0, 3],
    ['testPressure', 0.5, 80],
    ['flow', 0, 2000],
    ['bankAngle', 0, 180],
    ['temperature', -40, 60],
    ['finish', 1, 500],
  ])('%s: %d to %d, ends allowed', (quantity, least, most) => {
    const { unit } = quantities[quantity]
    for (const end of [least, most]) expect(read(`${end} ${unit}`, quantity).value).toBe(end)
    const past = quantities[quantity].whole ? 1 : 0.001
    for (const beyond of [least - past, most + past]) {
      expect(parseFigure(`${beyond} ${unit}`, quantity)).toMatchObject({ refusal: { code: 'out-of-range' } })
    }
  })

  it('every unit of the keypad is one of the quantity’s', () => {
    for (const { keypadUnits, family, unit } of Object.values(quantities)) {
      expect(Object.keys(unitFamilies[family])).toEqual(expect.arrayContaining([...keypadUnits, unit]))
    }
  })
})

describe('figures as shown', () => {
  it('has the same decimals for one quantity and unit', () => {
    expect(formatFigure(0.018, 'depth')).toBe('0.0180 in')
    expect(formatFigure(0.018, 'depth', 'thou')).toBe('18.0 thou')
    expect(formatFigure(0.0175, 'depth', 'thou')).toBe('17.5 thou')
    expect(formatFigure(4, 'bore', 'mm')).toBe('101.600 mm')
    expect(formatFigure(20, 'temperature', '°F')).toBe('68.0 °F')
    expect(formatFigure(0.5, 'angle')).toBe('0.500°')
    expect(formatFigure(8, 'count')).toBe('8')
    expect(formatFigure(0.018, 'depth', 'constructor')).toBe('0.0180 in')
  })

  it('shows no minus nothing and no NaN', () => {
    expect(formatBare(-0.000001, 'depth')).toBe('0.0000')
    expect(formatBare(NaN, 'depth')).toBe('–')
    expect(formatThou(-0.00001)).toBe('0 thou')
    expect(formatThou(0.0175)).toBe('17.5 thou')
  })

  it('what is shown reads back as the same figure, to the decimals shown', () => {
    const one = fc.constantFrom(...quantityNames).chain((quantity) => {
      const { least, most, family, whole } = quantities[quantity]
      const value = whole ? fc.integer({ min: least, max: most }) : fc.double({ min: least, max: most, noNaN: true })
      return fc.tuple(fc.constant(quantity), value, fc.constantFrom(...Object.keys(unitFamilies[family])))
    })
    fc.assert(
      fc.property(one, ([quantity, value, unit]) => {
        const { least, most, decimals } = quantities[quantity]
        const back = parseFigure(formatFigure(value, quantity, unit), quantity)
        // Half a last decimal of a unit whose scale is no power of ten is up to √10 halves of the core's.
        const rounding = 0.5 * Math.sqrt(10) * 10 ** -decimals + 1e-9
        // Rounding may carry a figure over its limit, no further than that.
        const off = back.ok ? Math.abs(back.value.value - value) : Math.min(value - least, most - value)
        expect(off).toBeLessThanOrEqual(rounding)
      }),
      { numRuns: 2000 },
    )
  })
})
