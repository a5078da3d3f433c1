import fc from 'fast-check'
import { unit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { chamberForRatio, compressionRatio, cylinderVolumes, ratioPerCc } from '../../../lib/core/compression/ratio'
import type { EngineFacts } from '../../../lib/core/engine/figures'
import { must } from '../../../lib/core/errors'

type Engine = Partial<EngineFacts>
const cuin = (in3: number): number => unit(in3, 'cuin').toNumber('cc')
const mm = (length: number): number => length / 25.4

const whole = {
  boreIn: 4,
  strokeIn: 3.48,
  gasketBoreIn: 4,
  gasketThicknessIn: 0.02,
  deckClearanceIn: 0.05,
  pistonDishCc: 5,
} satisfies Engine
const noGasket = { gasketThicknessIn: 0, pistonDishCc: 0 }

/** Printed ratios are held to 0.02: their authors round volumes on the way. */
const within = (ratio: number, printed: number) => expect(Math.abs(ratio - printed)).toBeLessThan(0.02)

describe('ratios in print', () => {
  it.each<[string, Engine, number, number]>([
    // The stroke is not printed; 3.48 gives its 43.731 in³.
    ['Circle Track, May 2004', whole, 70, 9.01],
    ['Circle Track, Feb 2011', { ...whole, deckClearanceIn: 0.033 }, 64, 9.97],
    [
      'Stroker Kits, Auto Math 101: 355 in³ over eight, 4.030 bore',
      {
        boreIn: 4.03,
        strokeIn: 355 / 8 / ((Math.PI / 4) * 4.03 ** 2),
        gasketBoreIn: 4.03,
        gasketThicknessIn: 0.03,
        deckClearanceIn: 0.009,
        pistonDomeCc: 12,
      },
      64,
      13.09,
    ],
    [
      'Great Plains Aircraft, compression-ratio notes',
      { boreIn: mm(92), strokeIn: mm(82), deckClearanceIn: 0.02, ...noGasket },
      48,
      11.6,
    ],
    [
      'Quality German Auto Parts, Formulas & Charts',
      { boreIn: mm(87), strokeIn: mm(69), deckClearanceIn: 0.06, ...noGasket },
      50,
      7.95,
    ],
    [
      // A blog prints 9.48 for these: it left out the one.
      'worked by hand: 527.48 swept, 9.649 over the deck, 46 in the chamber: 1 + 527.48/55.649',
      { boreIn: mm(90.5), strokeIn: mm(82), deckClearanceIn: mm(1.5), ...noGasket },
      46,
      10.48,
    ],
  ])('%s', (_, engine, chamberCc, printed) => {
    within(must(compressionRatio(must(cylinderVolumes(engine)), chamberCc)), printed)
  })

  it('Circle Track, May 2004: 43.731 in³ swept', () => {
    expect(must(cylinderVolumes(whole)).sweptCc).toBeCloseTo(cuin(43.731), 1)
  })

  it('Energies 2023, 16, 6655: 216.52 cm³ swept over 25.0', () => {
    within(must(compressionRatio({ sweptCc: 216.52, besideChamberCc: 0 }, 25)), 9.66)
  })

  it.each([
    [17.9, 3.77],
    [15.6, 4.24],
    [16.6, 4.02],
    [13.7, 4.76],
    [12.8, 5.07],
    [12.2, 5.31],
  ])('Antique Auto Ranch, July newsletter: %d in³ → %d', (chamberIn3, printed) => {
    const volumes = { sweptCc: cuin(44.2), besideChamberCc: cuin(0.92 - 2.86) }
    within(must(compressionRatio(volumes, cuin(chamberIn3))), printed)
  })

  const pontiac = [12.53, 11.77, 11.11, 10.52, 10.0, 9.52, 9.1, 8.72, 8.37, 8.06, 7.77, 7.5, 7.25, 7.02]
  it.each(pontiac.map((printed, at) => [50 + 5 * at, printed] as const))(
    'Pontiac Action, chamber-volume table (stroke from memory): %d cc → %d',
    (chamberCc, printed) => {
      const { sweptCc } = must(cylinderVolumes({ boreIn: 4.12, strokeIn: 3.75, deckClearanceIn: 0, ...noGasket }))
      within(must(compressionRatio({ sweptCc, besideChamberCc: 21 }, chamberCc)), printed)
    },
  )
})

describe('properties', () => {
  const volumes = fc.record({
    sweptCc: fc.double({ min: 50, max: 2000, noNaN: true }),
    besideChamberCc: fc.double({ min: 0, max: 60, noNaN: true }),
  })
  const chamber = fc.double({ min: 5, max: 300, noNaN: true })

  /** Ratios that an engine can have, a little inside the limits. */
  const isEngine = (of: { sweptCc: number; besideChamberCc: number }, chamberCc: number): boolean => {
    const ratio = 1 + of.sweptCc / (chamberCc + of.besideChamberCc)
    return ratio > 2.01 && ratio < 29.9
  }

  it('the chamber for a ratio gives that ratio', () => {
    fc.assert(
      fc.property(volumes, chamber, (of, chamberCc) => {
        fc.pre(isEngine(of, chamberCc))
        const ratio = must(compressionRatio(of, chamberCc))
        expect(must(chamberForRatio(of, ratio))).toBeCloseTo(chamberCc, 6)
      }),
    )
  })

  it('the change per cc is the slope of the ratio', () => {
    fc.assert(
      fc.property(volumes, chamber, (of, chamberCc) => {
        fc.pre(isEngine(of, chamberCc))
        const h = 1e-3
        const slope = (must(compressionRatio(of, chamberCc + h)) - must(compressionRatio(of, chamberCc - h))) / (2 * h)
        const perCc = must(ratioPerCc(of, chamberCc))
        expect(perCc).toBeLessThan(0)
        expect(Math.abs(perCc / slope - 1)).toBeLessThan(1e-5)
      }),
    )
  })

  it('a piston above the deck and a dome raise the ratio, a dish lowers it', () => {
    const at = (more: Engine) => must(compressionRatio(must(cylinderVolumes({ ...whole, ...more })), 64))
    expect(at({ deckClearanceIn: -0.01 })).toBeGreaterThan(at({ deckClearanceIn: 0 }))
    expect(at({ pistonDishCc: 8 })).toBeLessThan(at({ pistonDishCc: 0 }))
    expect(at({ pistonDishCc: 0, pistonDomeCc: 8 })).toBeGreaterThan(at({ pistonDishCc: 0 }))
  })

  it('any figures give a ratio above one or a refusal', () => {
    const any = fc.double()
    fc.assert(
      fc.property(any, any, any, any, any, (sweptCc, besideChamberCc, chamberCc, boreIn, ratio) => {
        const answers = [
          compressionRatio({ sweptCc, besideChamberCc }, chamberCc),
          chamberForRatio({ sweptCc, besideChamberCc }, ratio),
          ratioPerCc({ sweptCc, besideChamberCc }, chamberCc),
        ]
        for (const answer of answers) if (answer.ok) expect(Number.isFinite(answer.value)).toBe(true)
        const cylinder = cylinderVolumes({ ...whole, boreIn })
        if (cylinder.ok) expect(Number.isFinite(cylinder.value.sweptCc)).toBe(true)
      }),
    )
  })
})

describe('refusals', () => {
  const without = (key: keyof typeof whole): Engine =>
    Object.fromEntries(Object.entries(whole).filter(([name]) => name !== key))
  const given = { sweptCc: 700, besideChamberCc: 20 }

  it.each(['boreIn', 'strokeIn', 'gasketBoreIn', 'gasketThicknessIn', 'deckClearanceIn', 'pistonDishCc'] as const)(
    'needs %s, and says so',
    (key) => {
      expect(cylinderVolumes(without(key))).toMatchObject({ refusal: { code: 'missing', needs: [key] } })
    },
  )

  it('of an engine of which nothing is known, everything at once', () => {
    const answer = cylinderVolumes({})
    expect(answer.ok ? [] : answer.refusal.needs).toHaveLength(6)
  })

  it.each([
    ['no bore that size', () => cylinderVolumes({ ...whole, boreIn: 13 }), 'out-of-range'],
    ['no stroke below nothing', () => cylinderVolumes({ ...whole, strokeIn: -3 }), 'out-of-range'],
    ['a dish that is no number', () => cylinderVolumes({ ...whole, pistonDishCc: NaN }), 'out-of-range'],
    ['a gasket an inch thick', () => cylinderVolumes({ ...whole, gasketThicknessIn: 1 }), 'out-of-range'],
    ['a deck an inch down', () => cylinderVolumes({ ...whole, deckClearanceIn: 1 }), 'out-of-range'],
    ['no chamber', () => compressionRatio(given, 0), 'out-of-range'],
    ['no swept volume', () => compressionRatio({ ...given, sweptCc: 0 }, 60), 'out-of-range'],
    ['a piston that fills it', () => compressionRatio({ ...given, besideChamberCc: -60 }, 60), 'contradiction'],
    ['the slope there', () => ratioPerCc({ ...given, besideChamberCc: -60 }, 60), 'contradiction'],
    ['one to one', () => chamberForRatio(given, 1), 'out-of-range'],
    ['a chamber too small', () => chamberForRatio({ sweptCc: 300, besideChamberCc: 20 }, 30), 'unreachable'],
  ])('%s', (_, ask, code) => {
    expect(ask()).toMatchObject({ ok: false, refusal: { code } })
  })
})
