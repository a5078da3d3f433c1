import { unit } from 'mathjs'
import { expect, it } from 'vitest'
import { fromCore, toCore, unitNamed } from '../../../lib/core/units/convert'
import * as factors from '../../../lib/core/units/factors'
import type { Quantity } from '../../../lib/core/units/quantities'

const core = (figure: number, quantity: Quantity, name: string): number => {
  const factor = unitNamed(quantity, name)
  if (!factor) throw new Error(`${name} is no unit of ${quantity}`)
  expect(fromCore(toCore(figure, factor), factor)).toBeCloseTo(figure, 9)
  return toCore(figure, factor)
}

// 1 in = 25.4 mm, 1 thou = 0.001 in, 1 in³ = 16.387064 cm³, all exact (NIST SP 811, appendix B).
it('the exact ones are exact', () => {
  expect(factors.mmPerIn).toBe(25.4)
  expect(factors.thouPerIn).toBe(1000)
  expect(factors.ccPerIn3).toBe(16.387064)
  expect(factors.mm2PerIn2).toBe(645.16)
  expect(factors.litresPerFt3).toBe(28.316846592)
  expect(factors.newtonsPerLbf).toBe(4.4482216152605)
})

it('the inch of water is the conventional one, between those of 60 °F and 39.2 °F but for the last figure', () => {
  expect(factors.paPerInH2O).toBe(249.0889) // NIST SP 811: conventional
  expect(factors.paPerInH2O / 249.082 - 1).toBeLessThan(0.0001) // 39.2 °F
  expect(factors.paPerInH2O / 248.84 - 1).toBeLessThan(0.0011) // 60 °F
})

/** Units of the core that mathjs does not have, in one that it has. */
const notTheirs: Partial<Record<Quantity, number>> = { testPressure: factors.paPerInH2O, finish: 1e-6 }

it.each<[Quantity, string, string, string]>([
  ['depth', 'thou', 'mil', 'in'],
  ['bore', 'mm', 'mm', 'in'],
  ['chamberVolume', 'in³', 'cuin', 'cc'],
  ['area', 'mm²', 'mm^2', 'sqin'],
  ['area', 'cm²', 'cm^2', 'sqin'],
  ['angle', 'min', 'arcmin', 'deg'],
  ['testPressure', 'kPa', 'kPa', 'Pa'],
  ['flow', 'l/s', 'l/s', 'ft^3/minute'],
  ['temperature', '°F', 'degF', 'degC'],
  ['finish', 'µm', 'um', 'in'],
  ['springForce', 'N', 'N', 'lbf'],
])('%s in %s agrees with mathjs', (quantity, name, theirs, theirCore) => {
  for (const figure of [1, 12.5, 250]) {
    const expected = unit(figure, theirs).toNumber(theirCore)
    const ours = core(figure, quantity, name) * (notTheirs[quantity] ?? 1)
    expect(ours / expected).toBeCloseTo(1, 12)
  }
})
