import fc from 'fast-check'
import psychrolib from 'psychrolib'
import { describe, expect, it } from 'vitest'
import { airDensityKgM3, densityLbFt3FromKgM3 } from '@/lib/core/flow/air-density'
import { dischargeCoefficients } from '@/lib/core/flow/discharge'
import { powerEstimateHp } from '@/lib/core/flow/power-estimate'
import { convertFlow, correctForLeak } from '@/lib/core/flow/pressure'
import { idealFlowCfmPerIn2, idealVelocityFps, meanVelocityFps } from '@/lib/core/flow/velocity'
import { must, type Result } from '@/lib/core/errors'

const refusalCode = (result: Result<unknown>) => (result.ok ? 'was not refused' : result.refusal.code)

describe('flow at another test pressure', () => {
  // √(28/10) and √(28/25) by hand: 1.67332² = 2.8, 1.05830² = 1.12.
  it.each([
    [10, 1.6733],
    [25, 1.0583],
  ])('from %d to 28 inH₂O', (from, factor) => {
    expect(must(convertFlow(100, from, 28)) / 100).toBeCloseTo(factor, 4)
  })

  it('comes back when converted there and back, and never changes order', () => {
    const pressure = fc.double({ min: 0.5, max: 80, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 0, max: 150, noNaN: true }), pressure, pressure, (flow, a, b) => {
        const there = must(convertFlow(flow, a, b))
        expect(must(convertFlow(there, b, a))).toBeCloseTo(flow, 8)
        expect(Math.sign(there - flow) * Math.sign(b - a)).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it.each([
    ['no pressure', 100, 0, 28],
    ['too much pressure', 100, 10, 81],
    ['negative flow', -1, 10, 28],
    ['not a number', NaN, 10, 28],
  ])('refuses %s', (_, flow, from, to) => {
    expect(refusalCode(convertFlow(flow, from, to))).toBe('out-of-range')
  })
})

describe('leak', () => {
  it('is brought to the pressure of the reading first', () => {
    // By hand: 3·√(28/10) = 3·1.67332 = 5.01996.
    expect(must(correctForLeak(250, 28, 3, 10))).toBeCloseTo(244.98, 3)
  })

  it('leaves nothing when the leak is the reading', () => {
    expect(must(correctForLeak(4.2, 28, 4.2, 28))).toBe(0)
  })

  it('refuses a leak larger than the reading', () => {
    expect(refusalCode(correctForLeak(4, 28, 5, 28))).toBe('contradiction')
  })
})

describe('velocity', () => {
  it('of 28 inH₂O in standard air is 21,190 ft/min, 353 ft/s (T. Moss Porting)', () => {
    const velocity = must(idealVelocityFps(28))
    expect(velocity * 60).toBeCloseTo(21190, -1)
    expect(velocity).toBeCloseTo(353, 0)
  })

  it('is 4005·√VP in standard air (ACGIH, Industrial Ventilation)', () => {
    for (const pressure of [1, 4, 28]) {
      const printed = 4005 * Math.sqrt(pressure)
      expect(Math.abs(must(idealVelocityFps(pressure)) * 60 - printed) / printed).toBeLessThan(0.0002)
    }
  })

  it('gives 309 cfm through 2.1 in² (T. Moss Porting) and back', () => {
    expect(must(idealFlowCfmPerIn2(28)) * 2.1).toBeCloseTo(309, 0)
    expect(must(meanVelocityFps(309, 2.1))).toBeCloseTo(353, 0)
  })

  it('is 147.15 cfm per in² at 28 inH₂O, and with the root of the pressure elsewhere', () => {
    expect(must(idealFlowCfmPerIn2(28))).toBeCloseTo(147.15, 2)
    expect(must(idealFlowCfmPerIn2(7))).toBeCloseTo(147.15 / 2, 2)
  })

  it('refuses an area of nothing', () => {
    expect(refusalCode(meanVelocityFps(100, 0))).toBe('out-of-range')
  })
})

describe('discharge coefficients', () => {
  // Worked here in SI, apart from the 1096.7 of the trade: v = √(2·Δp/ρ), exact inch, foot and conventional inH₂O.
  const areaM2 = Math.PI * 2.02 * 0.5 * 0.0254 ** 2
  const flowM3s = (250 * 0.3048 ** 3) / 60
  const dropPa = 28 * 249.0889
  const input = { flowCfm: 250, testPressureInH2O: 28, valveDiameterIn: 2.02, liftIn: 0.5 }

  it('on the curtain, incompressible, at 1.2041 kg/m³: 0.5355', () => {
    const bySi = flowM3s / (areaM2 * Math.sqrt((2 * dropPa) / 1.2041))
    expect(bySi).toBeCloseTo(0.5355, 4)
    const ours = must(dischargeCoefficients({ ...input, densityLbFt3: densityLbFt3FromKgM3(1.2041) }))
    expect(Math.abs(ours.curtain - 0.5355)).toBeLessThan(0.001)
  })

  it('stands 3.8 % under the one against the isentropic ideal, 0.5564', () => {
    // Saint-Venant and Wantzel, from standing air at 101,325 Pa, flow counted at the density upstream.
    const k = 1.4
    const ratio = (101325 - dropPa) / 101325
    const speed = Math.sqrt(((2 * k) / (k - 1)) * (101325 / 1.2041) * (1 - ratio ** ((k - 1) / k)))
    const isentropicM3s = areaM2 * ratio ** (1 / k) * speed
    const incompressibleM3s = areaM2 * Math.sqrt((2 * dropPa) / 1.2041)
    const ours = must(dischargeCoefficients({ ...input, densityLbFt3: densityLbFt3FromKgM3(1.2041) }))
    expect(Math.abs((ours.curtain * incompressibleM3s) / isentropicM3s - 0.5564)).toBeLessThan(0.001)
  })

  it('are equal at a lift of a quarter of the diameter, and only there', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 5, noNaN: true }), (valveDiameterIn) => {
        const at = must(dischargeCoefficients({ ...input, valveDiameterIn, liftIn: valveDiameterIn / 4 }))
        expect(at.curtain / at.head).toBeCloseTo(1, 9)
        const lower = must(dischargeCoefficients({ ...input, valveDiameterIn, liftIn: valveDiameterIn / 8 }))
        expect(lower.curtain / lower.head).toBeCloseTo(2, 9)
      }),
    )
  })

  it('refuses a shut valve', () => {
    expect(refusalCode(dischargeCoefficients({ ...input, liftIn: 0 }))).toBe('out-of-range')
  })
})

describe('air density', () => {
  it('20 °C, 101,325 Pa, 50 % is 1.1993 kg/m³ (CIPM-2007)', () => {
    expect(must(airDensityKgM3(20, 101325, 50))).toBeCloseTo(1.1993, 4)
  })

  it('agrees with psychrolib within 0.1 % in the weather of a workshop', () => {
    psychrolib.SetUnitSystem(psychrolib.SI)
    for (const temperature of [0, 10, 20, 30, 40]) {
      for (const pressure of [85_000, 95_000, 101_325, 104_000]) {
        for (const humidity of [0, 30, 60, 100]) {
          const ratio = psychrolib.GetHumRatioFromRelHum(temperature, humidity / 100, pressure)
          const theirs = psychrolib.GetMoistAirDensity(temperature, ratio, pressure)
          const ours = must(airDensityKgM3(temperature, pressure, humidity))
          expect(Math.abs(ours - theirs) / theirs).toBeLessThan(0.001)
        }
      }
    }
  })

  it('falls with heat and with damp, rises with pressure', () => {
    const at = (t: number, p: number, h: number) => must(airDensityKgM3(t, p, h))
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 45, noNaN: true }),
        fc.double({ min: 80_000, max: 105_000, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (t, p, h) => {
          expect(at(t + 5, p, h)).toBeLessThan(at(t, p, h))
          expect(at(t, p, h + 10)).toBeLessThan(at(t, p, h))
          expect(at(t, p + 1000, h)).toBeGreaterThan(at(t, p, h))
        },
      ),
    )
  })

  it('refuses a barometer in inches of mercury', () => {
    expect(refusalCode(airDensityKgM3(20, 29.92, 50))).toBe('out-of-range')
  })
})

describe('power estimate', () => {
  it('is 433 hp for eight cylinders of 126 cfm at 10 inH₂O (Denny’s Hangout)', () => {
    expect(must(powerEstimateHp(126, 10, 8))).toBeCloseTo(433, 0)
  })

  it('is 0.257 hp for each cfm at 28 inH₂O (0.43·√(10/28) by hand)', () => {
    expect(must(powerEstimateHp(1, 28, 1))).toBeCloseTo(0.257, 3)
  })

  it('refuses an engine without cylinders', () => {
    expect(refusalCode(powerEstimateHp(126, 10, 0))).toBe('out-of-range')
  })
})
