import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { questionsOf } from '@/lib/core/expected/questions'
import { stopsOf } from '@/lib/core/expected/stops'
import { pointLabel, pointsOf } from '@/lib/core/readings/points'
import { groupOf, placesOf, portOf, valveAt } from '@/lib/core/readings/valves'
import { cellLimits } from '@/lib/core/valve-sheet/cell-limits'
import { parseSeatAngles, parseShims } from '@/lib/core/valve-sheet/lists'
import { columnsInUse, columnState, valveName, valveSheet, type SheetReading } from '@/lib/core/valve-sheet/sheet'
import { springOfValve } from '@/lib/core/valve-sheet/spring'
import { typedFigures, unknownHead } from '../expected/facts'

const wantedAt = (value: number) => ({ value, text: String(value), unit: '', from: 'job' as const })
const two = { chambers: 2, valves: { intake: 2, exhaust: 1 } }
const read = (seq: number, kind: SheetReading['kind'], point: string, value: number, filled = false): SheetReading => ({
  seq,
  kind,
  point,
  value,
  text: String(value),
  notTaken: null,
  filled,
})

describe('valves', () => {
  it('are named by chamber and kind, and by number where a chamber has two of a kind', () => {
    expect(pointsOf('each-valve', two)).toEqual([
      ...['1-intake', '1-intake-2', '1-exhaust', '2-intake', '2-intake-2', '2-exhaust'],
    ])
    expect(pointsOf('each-valve', { chambers: 4 })).toHaveLength(8)
    expect(pointLabel('2-intake-2')).toBe('chamber 2 intake 2')
    const [first] = valveSheet([], two).valves
    expect(valveName(first!, two.valves)).toBe('1 intake 1')
    expect(valveName(first!, { intake: 1, exhaust: 1 })).toBe('1 intake')
  })

  it('are told from corners and lifts', () => {
    expect([valveAt('intake-1'), valveAt('intake@0.300'), valveAt('intake'), valveAt('')]).toEqual(Array(4).fill(null))
    expect([portOf('2-exhaust-2'), portOf('2-intake-2')]).toEqual(['exhaust', 'intake'])
    expect(['3-intake-2', '3-exhaust', 'intake-1', 'seat'].map(groupOf)).toEqual([
      ...['intake', 'exhaust', 'intake-1', 'seat'],
    ])
  })

  it('have their answer from where one stood for all, before each had its own', () => {
    const at = (kind: Parameters<typeof placesOf>[0]) =>
      placesOf(kind, '2-exhaust').map((one) => `${one.kind}|${one.point}`)
    expect(at('seat-width')).toEqual(['seat-width|2-exhaust', 'seat-width|exhaust'])
    expect(at('runout')).toEqual(['runout|2-exhaust', 'runout|'])
    expect(at('seat-pressure')).toEqual(['seat-pressure|2-exhaust', 'spring-pressure|seat'])
    expect(at('open-pressure')).toEqual(['open-pressure|2-exhaust', 'spring-pressure|open'])
    expect(at('seat-depth')).toEqual(['seat-depth|2-exhaust'])
  })
})

describe('the sheet', () => {
  const widths = (readings: readonly SheetReading[]) =>
    valveSheet(readings, two).columns.find(({ column }) => column.kind === 'seat-width')!

  it('takes a valve’s own answer before one that stood for all, whichever came later', () => {
    const { cells } = widths([read(5, 'seat-width', '2-intake', 0.058), read(9, 'seat-width', 'intake', 0.06)])
    expect(cells.map(({ reading, filled }) => [reading?.value ?? null, filled])).toEqual([
      ...[
        [0.06, true],
        [0.06, true],
        [null, false],
        [0.058, false],
        [0.06, true],
        [null, false],
      ],
    ])
  })

  it('takes the later of two answers of one valve: measured after it was filled, it is measured', () => {
    const readings = [read(9, 'seat-width', '1-intake', 0.061), read(4, 'seat-width', '1-intake', 0.06, true)]
    expect(widths(readings).cells[0]).toMatchObject({ filled: false, reading: { value: 0.061 } })
  })

  it('says how a column came about', () => {
    const points = pointsOf('each-valve', two)
    const all = (filled: (point: string) => boolean) =>
      columnState(widths(points.map((point, at) => read(at + 1, 'seat-width', point, 0.06, filled(point)))))
    expect(columnState(widths([]))).toBe('empty')
    expect(all(() => true)).toBe('filled')
    expect(all(() => false)).toBe('measured')
    expect(all((point) => point !== '1-intake')).toBe('part filled')
    expect(columnState(widths([read(1, 'seat-width', '1-intake', 0.06)]))).toBe('part')
  })

  it('shows the columns that have an answer and those that are asked for', () => {
    const sheet = valveSheet([read(1, 'runout', '', 0.001)], two)
    expect(columnsInUse(sheet, new Set(['sink'])).map(({ column }) => column.kind)).toEqual(['runout', 'sink'])
  })
})

describe('limits of a cell', () => {
  const facts = {
    ...unknownHead,
    liftIn: { intake: 0.55, exhaust: null },
    wanted: { intakeSeatWidthIn: wantedAt(0.06), exhaustSeatPressureLbf: wantedAt(120) },
  }
  // Defaults: runout 0.002, vacuum 18, margin 0.050, width ± 0.010, pressures ± 10 %.
  it.each([
    ['runout', '1-intake', null, 0.002],
    ['vacuum', '1-exhaust', 18, null],
    ['retainer-to-seal', '1-intake-2', 0.6, null],
    ['seat-width', '2-intake-2', 0.05, 0.07],
    ['seat-pressure', '2-exhaust', 108, 132],
  ] as const)('%s at %s', (kind, point, lowest, highest) => {
    const limits = cellLimits(kind, point, facts)
    if (lowest === null) expect(limits?.lowest).toBeNull()
    else expect(limits?.lowest).toBeCloseTo(lowest, 12)
    if (highest === null) expect(limits?.highest).toBeNull()
    else expect(limits?.highest).toBeCloseTo(highest, 12)
  })

  it('are none where nothing is known', () => {
    expect(cellLimits('retainer-to-seal', '1-exhaust', facts)).toBeNull()
    expect(cellLimits('seat-width', '1-exhaust', facts)).toBeNull()
    expect(cellLimits('seat-angles', '1-exhaust', facts)).toBeNull()
  })
})

describe('what cannot be true together', () => {
  const facts = { ...unknownHead, stepId: 'heights' as const, liftIn: { intake: 0.55, exhaust: 0.5 } }
  const keys = (here: Readonly<Record<string, number>>, before: Readonly<Record<string, number>> = {}) =>
    stopsOf({ ...facts, here, before }).map((stop) => stop.keys)

  it('is told at the one valve: its own lift, its own coil bind', () => {
    // Exhaust: 0.500 + 0.050 = 0.550 is enough, 0.549 is not; intake needs 0.600.
    expect(
      keys({
        'retainer-to-seal|1-exhaust': 0.55,
        'retainer-to-seal|2-exhaust-2': 0.549,
        'retainer-to-seal|1-intake': 0.599,
        'retainer-to-seal|2-intake-2': 0.6,
      }),
    ).toEqual([['retainer-to-seal|2-exhaust-2'], ['retainer-to-seal|1-intake']])
    // 1.700 − 1.090 = 0.610 = 0.550 + 0.060; with coil bind 1.091 it is a thou short.
    expect(
      keys({
        'installed-height|1-intake': 1.7,
        'coil-bind|1-intake': 1.09,
        'installed-height|1-intake-2': 1.7,
        'coil-bind|1-intake-2': 1.091,
      }),
    ).toEqual([['installed-height|1-intake-2', 'coil-bind|1-intake-2']])
  })

  it('holds against a coil bind that stood for all intake valves', () => {
    expect(keys({ 'installed-height|2-intake': 1.7 }, { 'coil-bind|intake': 1.091 })).toEqual([
      ['installed-height|2-intake', 'coil-bind|intake'],
    ])
  })
})

describe('a vacuum', () => {
  it('under a third of the least is questioned', () => {
    const asked = (text: string) => questionsOf(typedFigures({ 'vacuum|1-intake': text }), unknownHead).length
    expect([asked('5.9'), asked('6'), asked('25')]).toEqual([1, 0, 0])
  })
})

describe('the spring of one valve', () => {
  const facts = {
    ...unknownHead,
    here: { 'seat-pressure|2-exhaust': 110 },
    before: {
      'installed-height|2-exhaust': 1.8,
      'coil-bind|exhaust': 1.06,
      'retainer-to-seal|2-exhaust': 0.642,
      'spring-rate|exhaust': 400,
    },
    liftIn: { intake: null, exhaust: 0.55 },
    wanted: { exhaustSeatPressureLbf: wantedAt(125) },
    shimsIn: [0.03],
  }

  it('is worked out again with the shim', () => {
    const { usable, shim, rateFrom } = springOfValve('2-exhaust', facts)
    // 0.642 − 0.050 against 1.800 − 1.060 − 0.060 = 0.680.
    expect(must(usable)).toMatchObject({ boundBy: 'retainer', enough: true })
    expect(must(usable).usableIn).toBeCloseTo(0.592, 12)
    const advice = must(shim!)
    // (125 − 110)/400 = 0.0375: of none, 0.030 and two of it the nearest is one.
    expect(advice.shimsIn).toEqual([0.03])
    expect([advice.installedHeightIn, advice.seatLbf, advice.openLbf].map((one) => Number(one.toFixed(9)))).toEqual([
      1.77, 122, 342,
    ])
    // 1.770 − 1.060 − 0.060 = 0.650: the retainer still comes first, and a shim does not move it.
    expect(must(advice.usable).usableIn).toBeCloseTo(0.592, 12)
    expect(rateFrom).toBe('maker')
  })

  it('a shim can take the lift that the spring had', () => {
    const tight = { ...facts.before, 'installed-height|2-exhaust': 1.69, 'retainer-to-seal|2-exhaust': 0.9 }
    const { usable, shim } = springOfValve('2-exhaust', { ...facts, before: tight })
    // 1.690 − 1.060 − 0.060 = 0.570 for a lift of 0.550; with 0.030 in it is 0.540.
    expect(must(usable)).toMatchObject({ enough: true, boundBy: 'coil-bind' })
    expect(must(must(shim!).usable)).toMatchObject({ enough: false })
  })

  it('works its rate out from the two pressures where the maker’s is not known', () => {
    const here = { 'seat-pressure|2-exhaust': 110, 'open-pressure|2-exhaust': 330 }
    const known = { ...facts.before, 'spring-rate|exhaust': undefined } as never
    const { shim, rateFrom } = springOfValve('2-exhaust', { ...facts, here, before: known })
    expect(rateFrom).toBe('pressures')
    // (330 − 110)/0.550 = 400.
    expect(must(shim!).openLbf).toBeCloseTo(342, 9)
  })

  it('advises nothing where no pressure is wanted, and says what is missing', () => {
    expect(springOfValve('2-exhaust', { ...facts, wanted: {} }).shim).toBeNull()
    const bare = springOfValve('1-intake', { ...facts, wanted: { intakeSeatPressureLbf: wantedAt(125) } })
    expect(bare.usable).toMatchObject({ ok: false, refusal: { code: 'missing' } })
    expect(bare.shim).toMatchObject({ ok: false, refusal: { code: 'missing' } })
    expect(bare.rateFrom).toBeNull()
  })

  it('takes shims that came later off the installed height, and none that were in when it was measured', () => {
    const before = { ...facts.before, 'shims|2-exhaust': 0.015 }
    const now = (shims: number) =>
      springOfValve('2-exhaust', { ...facts, before, here: { 'shims|2-exhaust': shims } }).installedHeightIn
    expect(now(0.015)).toBe(1.8)
    expect(now(0.045)).toBeCloseTo(1.77, 12)
    expect(springOfValve('2-exhaust', { ...facts, here: { 'shims|2-exhaust': 0.045 } }).installedHeightIn).toBe(1.8)
  })
})

describe('the shop’s lists', () => {
  it('are typed apart by commas', () => {
    expect(must(parseShims('0.060, .015; 30 thou, .060'))).toEqual([0.015, 0.03, 0.06])
    expect(must(parseShims(''))).toEqual([])
    expect(parseShims('0.030, thick').ok).toBe(false)
    expect(parseShims('3').ok).toBe(false)
    expect(must(parseSeatAngles('30 45 60,  15  45 75'))).toEqual(['30 45 60', '15 45 75'])
    expect(parseSeatAngles('30 450 60').ok).toBe(false)
    expect(parseSeatAngles('1 2 3').ok).toBe(false)
  })
})
