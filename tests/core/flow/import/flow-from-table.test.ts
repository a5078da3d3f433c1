import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { flowFromTable } from '@/lib/core/flow/import/flow-from-table'
import { guessColumns, type ColumnUse, type LiftUnit } from '@/lib/core/flow/import/guess-columns'
import { readFlowTable } from '@/lib/core/flow/import/read-table'
import { unsound } from '../../any-figure'

const rowsOf = (text: string) => must(readFlowTable(text)).rows
const guessOf = (text: string) => guessColumns(rowsOf(text))

describe('which column is what', () => {
  it.each<[string, readonly ColumnUse[], LiftUnit]>([
    ['Valve lift (in),Intake cfm,Exhaust cfm', ['lift', 'intake', 'exhaust'], 'in'],
    ['L,In,Ex', ['lift', 'intake', 'exhaust'], 'in'],
    ['lift mm,exh,int', ['lift', 'exhaust', 'intake'], 'mm'],
    ['in,int,ex', ['lift', 'intake', 'exhaust'], 'in'],
    ['No,Lift thou,Note,Inlet', [null, 'lift', null, 'intake'], 'thou'],
    ['lift,cfm', ['lift', 'intake'], 'in'],
    ['mm,cfm,cfm', ['lift', 'intake', 'exhaust'], 'mm'],
  ])('is seen from the heading “%s”', (head, columns, liftUnit) => {
    const width = head.split(',').length
    const line = (lift: string, flow: number) =>
      [lift, ...Array.from({ length: width - 1 }, (_, i) => String(flow - 10 * i))].join(',')
    // A running number is in front where the heading says so.
    const body = head.startsWith('No') ? '1,100,good,60\n2,200,good,118' : `${line('0.100', 60)}\n${line('0.200', 118)}`
    expect(guessOf(`${head}\n${body}`)).toEqual({ columns, heading: 1, liftUnit })
  })

  it('is seen from the figures when nothing is written over them', () => {
    const thou = 'x\t100\t60.1\t50\ny\t200\t118\t90.2\nz\t300\t160\t121'
    expect(guessOf(thou)).toEqual({
      columns: [null, 'lift', 'intake', 'exhaust'],
      heading: 0,
      liftUnit: 'thou',
    })
    expect(guessOf('2,54;60\n5,08;118')).toEqual({ columns: ['lift', 'intake'], heading: 0, liftUnit: 'mm' })
    expect(guessOf('0.2,118\n0.1,60').columns).toEqual(['lift', 'intake'])
  })

  it('what stands above the heading is not read as figures', () => {
    expect(guessOf('Bench run\nTest pressure,28\nLift,Int\n0.1,60').heading).toBe(3)
  })

  it('stays open when nothing tells', () => {
    expect(guessOf('red,green\nblue,brown').columns).toEqual([null, null])
  })
})

describe('a table with bad lines', () => {
  const text = [
    'Lift,Intake,Exhaust',
    '0.100,61.5,50.2',
    '0.200,118,abc',
    'half,150,120',
    '0.200,119,91',
    '2.5,300,200',
    '',
    ',180,140',
    '0.300,2400,121',
    '0.400,-5,141.0',
    '0.500,,150.5',
    '0.600,240.0,—',
  ].join('\r\n')
  const read = must(flowFromTable(rowsOf(text), guessOf(text)))

  it('gives the good figures as they are written', () => {
    expect(read.readings.map(({ point, text: typed }) => [point, typed])).toEqual([
      ['intake@0.100', '61.5'],
      ['exhaust@0.100', '50.2'],
      ['intake@0.200', '118'],
      ['exhaust@0.300', '121'],
      ['exhaust@0.400', '141.0'],
      ['intake@0.500', ''],
      ['exhaust@0.500', '150.5'],
      ['intake@0.600', '240.0'],
      ['exhaust@0.600', ''],
    ])
  })

  it('where nothing stands, a reason is still to be given', () => {
    expect(read.readings.filter(({ flowCfm }) => flowCfm === null).map(({ point }) => point)).toEqual([
      'intake@0.500',
      'exhaust@0.600',
    ])
  })

  it('names each line that gave nothing, and why', () => {
    expect(read.linesRead).toBe(10)
    expect(read.leftOut.map(({ line, what, why }) => [line, what, why])).toEqual([
      [3, 'exhaust', expect.stringContaining('“abc” is not a figure')],
      [4, 'line', expect.stringContaining('“half” is not a figure')],
      [5, 'line', 'The lift 0.200 in is on line 3 already.'],
      [6, 'line', expect.stringContaining('2.5')],
      [8, 'line', 'No lift stands there.'],
      [9, 'intake', expect.stringContaining('2400 is not possible for flow')],
      [10, 'intake', expect.stringContaining('-5 is not possible for flow')],
    ])
  })
})

describe('the lift', () => {
  const liftsOf = (text: string, liftUnit: LiftUnit) =>
    must(flowFromTable(rowsOf(text), { columns: ['lift', 'intake'], heading: 0, liftUnit })).readings.map(
      ({ point }) => point,
    )

  it('is taken in the unit chosen, unless its own stands beside it', () => {
    // 7.62 mm = 0.300 in exactly; 10.16 mm = 0.400 in.
    expect(liftsOf('7,62;160\n10,16;190', 'mm')).toEqual(['intake@0.300', 'intake@0.400'])
    expect(liftsOf('300;160', 'thou')).toEqual(['intake@0.300'])
    expect(liftsOf('7.62 mm\t160', 'in')).toEqual(['intake@0.300'])
    expect(liftsOf('0.300";160', 'mm')).toEqual(['intake@0.300'])
  })

  it('two that are one to the thou are one', () => {
    const read = must(
      flowFromTable(rowsOf('0.3001\t160\n0.2999\t161'), {
        columns: ['lift', 'intake'],
        heading: 0,
        liftUnit: 'in',
      }),
    )
    expect(read.leftOut).toEqual([{ line: 2, what: 'line', why: 'The lift 0.300 in is on line 1 already.' }])
  })
})

describe('a choice that cannot be', () => {
  const refused = (columns: readonly ColumnUse[]) => {
    const read = flowFromTable(rowsOf('0.1,60'), { columns, heading: 0, liftUnit: 'in' })
    return read.ok ? null : read.refusal.code
  }
  it('is refused in words', () => {
    expect(refused([null, 'intake'])).toBe('missing')
    expect(refused(['lift', null])).toBe('missing')
    expect(refused(['lift', 'lift'])).toBe('contradiction')
    expect(refused(['lift', 'intake'])).toBeNull()
  })
})

const separator = fc.constantFrom('\t', ';', ',')

describe('whatever is pasted', () => {
  it('a table written out comes back', () => {
    const run = fc.uniqueArray(
      fc.tuple(
        fc.integer({ min: 0, max: 2000 }),
        fc.integer({ min: 0, max: 20_000 }),
        fc.integer({ min: 0, max: 20_000 }),
      ),
      { selector: ([thou]) => thou, minLength: 1, maxLength: 30 },
    )
    fc.assert(
      fc.property(run, separator, fc.boolean(), fc.boolean(), (lines, by, commas, heading) => {
        const figure = (value: number, decimals: number) => {
          const text = value.toFixed(decimals)
          return commas && by !== ',' ? text.replace('.', ',') : text
        }
        const table = lines.map(([thou, intake, exhaust]) => [
          figure(thou / 1000, 3),
          figure(intake / 10, 1),
          figure(exhaust / 10, 1),
        ])
        const text = [...(heading ? [['Lift in', 'Intake', 'Exhaust']] : []), ...table]
          .map((cells) => cells.join(by))
          .join('\r\n')
        const columns: ColumnUse[] = ['lift', 'intake', 'exhaust']
        const read = must(flowFromTable(rowsOf(text), { columns, heading: heading ? 1 : 0, liftUnit: 'in' }))
        expect(read.leftOut).toEqual([])
        expect(read.readings.map(({ point, flowCfm }) => [point, flowCfm])).toEqual(
          lines.flatMap(([thou, intake, exhaust]) => [
            [`intake@${(thou / 1000).toFixed(3)}`, intake / 10],
            [`exhaust@${(thou / 1000).toFixed(3)}`, exhaust / 10],
          ]),
        )
        if (heading) expect(guessColumns(rowsOf(text)).columns).toEqual(columns)
      }),
    )
  })

  it('garbage never throws, and no figure is made of it', () => {
    const scrap = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 400 }),
      fc
        .array(
          fc.constantFrom('lift', 'in', 'ex', '0.1', '1e999', 'NaN', '-', '"', '\t', ';', ',', '\n', '1/0', '٣', '∞'),
          { maxLength: 80 },
        )
        .map((parts) => parts.join('')),
    )
    const use = fc.constantFrom('lift' as const, 'intake' as const, 'exhaust' as const, null)
    fc.assert(
      fc.property(scrap, fc.array(use, { maxLength: 6 }), fc.integer({ min: -1, max: 9 }), (text, columns, heading) => {
        const table = readFlowTable(text)
        if (!table.ok) return
        const guess = guessColumns(table.value.rows)
        for (const choice of [guess, { columns, heading, liftUnit: 'in' as const }]) {
          const read = flowFromTable(table.value.rows, choice)
          if (!read.ok) continue
          expect(unsound(read.value.readings.map(({ liftIn, flowCfm }) => [liftIn, flowCfm]))).toBeNull()
          for (const { liftIn, flowCfm } of read.value.readings) {
            expect(liftIn >= 0 && liftIn <= 2).toBe(true)
            expect(flowCfm === null || (flowCfm >= 0 && flowCfm <= 2000)).toBe(true)
          }
        }
      }),
      { numRuns: 1000 },
    )
  })
})
