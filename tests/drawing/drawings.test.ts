import { curveMonotoneX, line } from 'd3-shape'
import { describe, expect, it } from 'vitest'
import type { StepState } from '@/lib/core/route/types'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { roundStep, ticks } from '@/lib/drawing/axis'
import { flowCurves, flowRunCurves } from '@/lib/drawing/flow-curves'
import type { Graduation } from '@/lib/drawing/graduations'
import { headPlan } from '@/lib/drawing/head-plan'
import { headScale } from '@/lib/drawing/head-scale'
import { headSection } from '@/lib/drawing/head-section'
import { hatchPath, type Drawing } from '@/lib/drawing/marks'
import { tagPlate } from '@/lib/drawing/tag-plate'
import { toSvg } from '@/lib/drawing/to-svg'

const graduation = (state: StepState, more: Partial<Graduation> = {}): Graduation => ({
  label: `${state} step`,
  state,
  owesReading: false,
  outside: false,
  held: false,
  ...more,
})

const route: readonly Graduation[] = [
  graduation('done', { owesReading: true }),
  graduation('started', { outside: true }),
  graduation('ready'),
  graduation('do again'),
  graduation('waived'),
  graduation('not needed'),
  graduation('to do', { held: true }),
]

const head: HeadDrawing = {
  chambers: 4,
  cutKind: 'angle-flat',
  deepEdge: 'exhaust',
  edgeDepths: { intake: '0.020 in', exhaust: '0.083 in' },
  cornerReadings: { 'intake-1': '4.512', 'exhaust-1': '4.449', 'intake-2': '4.511', 'exhaust-2': '4.450' },
  chamberReadings: ['64.2', '64.0', null, '64.1'],
  bolts: [{ across: 0.9, along: 0.5, long: true, slotted: true }],
  slotToward: 'exhaust',
}

/** 7 × 20 in, touched half an inch inside both ways. */
const touchedHead: HeadDrawing = {
  ...head,
  touched: { acrossShare: 0.5 / 7, alongShare: 0.025, words: 'corners touched 0.500 in inside edges and ends' },
}

/** Two valves of a kind at their places across, an injector between them: 1.24 and 1.16 in over 7.2. */
const flatDeckHead: HeadDrawing = {
  ...head,
  deepEdge: null,
  cutKind: 'flat',
  chamberReadings: [],
  flatDeck: {
    valves: [2.55, 2.55, 4.65, 4.65].map((xIn) => ({ across: xIn / 7.2, widthShare: 1.24 / 7.2 })),
    injectorAcross: 0.5,
  },
}

const words = (drawing: Drawing) => drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))

/** All coordinates of the paths, as points. */
function points(drawing: Drawing): [number, number][] {
  return drawing.marks.flatMap((mark) => {
    if (mark.kind === 'text') return [[mark.x, mark.y] as [number, number]]
    const numbers = (mark.d.match(/-?[\d.]+/g) ?? []).map(Number)
    return Array.from({ length: numbers.length / 2 }, (_, i): [number, number] => [
      numbers[2 * i] ?? NaN,
      numbers[2 * i + 1] ?? NaN,
    ])
  })
}

function expectInside(drawing: Drawing): void {
  for (const [x, y] of points(drawing)) {
    expect(x).toBeGreaterThanOrEqual(0)
    expect(x).toBeLessThanOrEqual(drawing.widthMm)
    expect(y).toBeGreaterThanOrEqual(0)
    expect(y).toBeLessThanOrEqual(drawing.heightMm)
  }
}

describe('every drawing', () => {
  const longNames = route.map((step) => ({ ...step, label: 'Arrival check' }))
  const all: readonly (readonly [string, Drawing])[] = [
    ['scale', headScale(route, { widthMm: 150, forHand: false })],
    ['scale for hand', headScale(longNames, { widthMm: 180, forHand: true })],
    ['empty scale', headScale([], { widthMm: 150, forHand: true })],
    ['plan', headPlan(head)],
    ['plan, where it is touched', headPlan(touchedHead)],
    ['plan of a flat deck', headPlan(flatDeckHead)],
    ['plan of a flat deck of twelve', headPlan({ ...flatDeckHead, chambers: 12 })],
    ['plan of twelve', headPlan({ ...head, chambers: 12, deepEdge: 'intake' })],
    ['section', headSection(head)],
    ['tag', tagPlate('T-104127')],
    ['empty curves', flowCurves([], [], { title: 'Intake', widthMm: 90, heightMm: 60 })],
  ]

  it.each(all)('%s stays inside its own edges and speaks', (_, drawing) => {
    expectInside(drawing)
    expect(drawing.title).not.toBe('')
    expect(drawing.description).not.toBe('')
    expect(JSON.stringify(drawing)).not.toContain('null,null')
    expect(JSON.stringify(drawing)).not.toContain('NaN')
  })
})

describe('the head’s scale', () => {
  const pathCount = (list: readonly Graduation[]) =>
    headScale(list, { widthMm: 150, forHand: false }).marks.filter((mark) => mark.kind === 'path').length

  it('has no more paths for sixty steps than for seven: one a state', () => {
    const sixty = Array.from({ length: 60 }, (_, i) => route[i % route.length] ?? graduation('done'))
    expect(pathCount(sixty)).toBe(pathCount(route))
  })

  it('tells every state apart without colour', () => {
    const shapes = (['to do', 'ready', 'started', 'done', 'do again', 'waived', 'not needed'] as const).map((state) =>
      JSON.stringify(
        headScale([graduation(state)], { widthMm: 20, forHand: false }).marks.map((mark) =>
          mark.kind === 'text'
            ? mark.text
            : [mark.d, mark.fill !== null && mark.fill !== 'ground', mark.stroke?.widthMm],
        ),
      ),
    )
    expect(new Set(shapes).size).toBe(shapes.length)
  })

  const extent = (step: Graduation): [top: number, bottom: number] => {
    const solid = headScale([step], { widthMm: 20, forHand: false }).marks.flatMap((mark) =>
      mark.kind === 'path' && mark.fill === 'ink' ? [mark.d] : [],
    )
    const ys = (solid[0]?.match(/-?[\d.]+/g) ?? []).map(Number).filter((_, i) => i % 2 === 1)
    return [Math.min(...ys), Math.max(...ys)]
  }

  it('is longer where a reading is owed, and hangs below the edge outside', () => {
    const [shortTop, edge] = extent(graduation('done'))
    const [longTop, sameEdge] = extent(graduation('done', { owesReading: true }))
    expect(sameEdge).toBe(edge)
    expect(edge - longTop).toBeGreaterThan(1.5 * (edge - shortTop))
    const [top, bottom] = extent(graduation('done', { outside: true }))
    expect(top).toBe(edge)
    expect(bottom).toBeGreaterThan(edge)
  })

  it('waived carries a W, a hold is the only red', () => {
    const { marks } = headScale(route, { widthMm: 150, forHand: false })
    expect(words({ ...tagPlate('x'), marks })).toContain('W')
    const red = (list: readonly Graduation[]) =>
      JSON.stringify(headScale(list, { widthMm: 150, forHand: false }).marks).includes('"stop"')
    expect(red(route)).toBe(true)
    expect(red(route.map((step) => ({ ...step, held: false })))).toBe(false)
  })

  it('says all of it in words', () => {
    expect(headScale(route, { widthMm: 150, forHand: false }).description).toBe(
      '1 of 7 done. held at: to do step. ready: ready step. started: started step (outside). ' +
        'do again: do again step. waived: waived step. to do: to do step.',
    )
  })
})

describe('plan and section of the head', () => {
  it('name the deep edge in words, on the deep side', () => {
    const texts = (drawing: HeadDrawing) =>
      headPlan(drawing).marks.flatMap((mark) =>
        mark.kind === 'text' && mark.text.includes('deep edge') ? [{ text: mark.text, y: mark.y }] : [],
      )
    const [exhaust] = texts(head)
    const [intake] = texts({ ...head, deepEdge: 'intake' })
    expect(exhaust?.text).toBe('exhaust edge · deep edge · cut 0.083 in')
    expect(intake?.text).toBe('intake edge · deep edge · cut 0.020 in')
    expect(exhaust?.y ?? 0).toBeLessThan(intake?.y ?? 0)
    expect(headPlan(head).description).toContain('deep at the exhaust edge')
  })

  it('shows the valves of a flat deck across where the record has them, and no chamber', () => {
    const { marks, description } = headPlan(flatDeckHead, 150)
    // 150 mm: the deck is 122 long and 122/2.6 = 46.92 wide, from y 8; 2.55/7.2 of it from the intake edge at the foot.
    const width = 122 / 2.6
    const valves = marks.find((mark) => mark.kind === 'path' && (mark.d.match(/M/g) ?? []).length === 16)
    // Each circle begins at its top, half of 1.24/7.2 of the width over its middle.
    const y = (xIn: number) => 8 + (1 - xIn / 7.2) * width - (0.62 / 7.2) * width
    const starts =
      valves?.kind === 'path' ? [...valves.d.matchAll(/M[-\d.]+[ ,]([-\d.]+)/g)].map(([, at]) => Number(at)) : []
    const places = [...new Set(starts.map((at) => at.toFixed(1)))]
    expect(places).toEqual([y(2.55).toFixed(1), y(4.65).toFixed(1)])
    expect(description).toContain('4 cylinders, valves in a flat deck, counted from the marked end')
    expect(words(headPlan(flatDeckHead))).toContain('valves: across by the record, along the head not to scale')
    // Without places on record there are the numbers alone.
    const bare = headPlan({ ...flatDeckHead, flatDeck: { valves: [], injectorAcross: null } })
    expect(words(bare)).toContain('4')
    expect(words(bare).join()).not.toContain('valves')
  })

  it('names no deep edge for a flat cut and hatches nothing', () => {
    const flat: HeadDrawing = { ...head, cutKind: 'flat', deepEdge: null }
    expect(words(headPlan(flat)).join(' ')).not.toContain('deep')
    expect(headPlan(flat).marks.length).toBeLessThan(headPlan(head).marks.length)
  })

  it('shows the four points that are touched, as far inside as they are, and says how far', () => {
    const crosses = headPlan(touchedHead).marks.flatMap((mark) => {
      const line = mark.kind === 'path' ? /^M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)$/.exec(mark.d.trim()) : null
      if (!line) return []
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = line.slice(1).map(Number)
      // A cross is two strokes of one short length; the level one stands for it here.
      return y1 === y2 && x2 - x1 < 4 && x2 > x1 ? [{ x: (x1 + x2) / 2, y: y1 }] : []
    })
    expect(crosses).toHaveLength(4)
    const [xs, ys] = [crosses.map(({ x }) => x), crosses.map(({ y }) => y)]
    // The deck is drawn 122 long and 122/2.6 wide, from (14, 8).
    expect(Math.min(...xs)).toBeCloseTo(14 + 0.025 * 122, 2)
    expect(Math.max(...xs)).toBeCloseTo(14 + 0.975 * 122, 2)
    expect(Math.min(...ys)).toBeCloseTo(8 + (0.5 / 7) * (122 / 2.6), 2)
    expect(Math.max(...ys)).toBeCloseTo(8 + (6.5 / 7) * (122 / 2.6), 2)
    expect(words(headPlan(touchedHead)).join(' ')).toContain('+: corners touched 0.500 in inside edges and ends')
    expect(headPlan(touchedHead).description).toContain('corners touched 0.500 in inside')
    expect(words(headPlan(head)).join(' ')).not.toContain('touched')
  })

  it('puts chamber 1 at the marked end and each reading at its corner', () => {
    const find = (text: string) => headPlan(head).marks.find((mark) => mark.kind === 'text' && mark.text === text)
    const place = (text: string) => {
      const mark = find(text)
      return mark?.kind === 'text' ? [mark.x, mark.y] : []
    }
    const [endX = NaN] = place('marked end')
    const [oneX = NaN] = place('1')
    const [fourX = NaN] = place('4')
    expect(endX).toBeLessThan(oneX)
    expect(oneX).toBeLessThan(fourX)
    const [inX = NaN, inY = NaN] = place('4.512')
    const [exX = NaN, exY = NaN] = place('4.450')
    expect(inX).toBeLessThan(exX)
    expect(inY).toBeGreaterThan(exY)
  })

  it('the section takes more off at the deep edge', () => {
    const cut = (drawing: HeadDrawing) => {
      const solid = headSection(drawing).marks.find((mark) => mark.kind === 'path' && mark.fill === 'ink')
      const ys = ((solid?.kind === 'path' ? solid.d : '').match(/-?[\d.]+/g) ?? []).map(Number)
      return { intake: (ys[1] ?? NaN) - (ys[3] ?? NaN), exhaust: (ys[7] ?? NaN) - (ys[5] ?? NaN) }
    }
    expect(cut(head).exhaust).toBeGreaterThan(cut(head).intake)
    const other = cut({ ...head, deepEdge: 'intake' })
    expect(other.intake).toBeGreaterThan(other.exhaust)
    const flat = cut({ ...head, cutKind: 'flat', deepEdge: null })
    expect(flat.intake).toBeCloseTo(flat.exhaust, 6)
  })
})

describe('flow curves', () => {
  const run = [64.2, 131.8, 190.4, 233.9, 251.2].map((flowCfm, i) => ({ liftIn: (i + 1) / 10, flowCfm }))
  const setting = { title: 'Intake', widthMm: 100, heightMm: 60 }

  it('draw the curve that d3-shape draws through the same places', () => {
    const { marks } = flowCurves([], run, setting)
    const heavy = marks.find((mark) => mark.kind === 'path' && mark.stroke?.widthMm === 0.75)
    const ours = ((heavy?.kind === 'path' ? heavy.d : '').match(/-?[\d.]+/g) ?? []).map(Number)
    // Knots: the start, then the last point of each cubic piece.
    const knots = run.map((_, i): [number, number] => [ours[6 * i] ?? NaN, ours[6 * i + 1] ?? NaN])
    const theirs = (
      line()
        .curve(curveMonotoneX)(knots)
        ?.match(/-?[\d.]+/g) ?? []
    ).map(Number)
    expect(theirs).toHaveLength(ours.length)
    ours.forEach((value, i) => expect(Math.abs(value - (theirs[i] ?? NaN))).toBeLessThan(0.06))
  })

  it('name both ends and cross what was not taken', () => {
    const lost = { liftIn: 0.6, flowCfm: null }
    const drawing = flowCurves(run, [...run, lost], setting)
    expect(words(drawing)).toEqual(expect.arrayContaining(['before', 'after', 'not taken', 'cfm']))
    expect(words(flowCurves(run, run, setting))).not.toContain('not taken')
    expect(drawing.description).toContain('0.600 in not taken')
  })

  it('keep the two names apart when the ends meet', () => {
    const ys = flowCurves(run, run, setting).marks.flatMap((mark) =>
      mark.kind === 'text' && ['before', 'after'].includes(mark.text) ? [mark.y] : [],
    )
    expect(Math.abs((ys[0] ?? 0) - (ys[1] ?? 0))).toBeGreaterThan(3)
  })

  it('before and after differ in weight and dash, not in colour alone', () => {
    const strokes = flowCurves(run, run, setting).marks.flatMap((mark) =>
      mark.kind === 'path' && mark.d.includes('C') && mark.fill === null && mark.stroke ? [mark.stroke] : [],
    )
    expect(strokes).toHaveLength(2)
    expect(strokes[0]?.dashMm).toBeDefined()
    expect(strokes[1]?.dashMm).toBeUndefined()
    expect(strokes[1]?.widthMm ?? 0).toBeGreaterThan(strokes[0]?.widthMm ?? 0)
  })

  it('five runs are told apart by dash and weight, and their names stand clear of each other', () => {
    const names = ['reference', 'before', 'after port', 'after cut', 'after']
    const { marks, description, widthMm } = flowRunCurves(
      names.map((name) => ({ name, points: run })),
      setting,
    )
    const looks = marks.flatMap((mark) =>
      mark.kind === 'path' && mark.d.includes('C') && mark.fill === null && mark.stroke && mark.stroke.widthMm > 0.3
        ? [`${mark.stroke.widthMm} ${mark.stroke.dashMm?.join('-') ?? 'solid'}`]
        : [],
    )
    expect(new Set(looks).size).toBe(5)
    const labels = marks.flatMap((mark) => (mark.kind === 'text' && names.includes(mark.text) ? [mark] : []))
    const ys = labels.map(({ y }) => y).sort((a, b) => a - b)
    ys.slice(1).forEach((y, place) => expect(y - (ys[place] ?? 0)).toBeGreaterThan(3.3))
    labels.forEach(({ x, text, sizeMm }) => expect(x + text.length * sizeMm * 0.5).toBeLessThan(widthMm))
    expect(description).toContain('Reference: 0.100 in 64.2 cfm')
  })
})

describe('axis', () => {
  it.each([
    [0.7, 8, 0.1],
    [258, 5, 100],
    [90, 5, 20],
    [0, 5, 1],
  ])('steps round numbers over %d in about %d parts', (span, parts, step) => {
    expect(roundStep(span, parts)).toBeCloseTo(step, 9)
  })

  it('ends at or above the top', () => {
    expect(ticks(258, 5).at(-1)).toBe(300)
    expect(ticks(300, 5).at(-1)).toBe(300)
  })
})

describe('SVG', () => {
  it('is plain elements with React’s attribute names, in millimetres, with the page’s colours', () => {
    const { viewBox, elements } = toSvg(tagPlate('T-0412'))
    expect(viewBox).toMatch(/^0 0 [\d.]+ 16$/)
    expect(elements.map((element) => element.tag)).toEqual(['path', 'path', 'text'])
    expect(elements[0]?.attrs).toMatchObject({
      fill: 'var(--brass)',
      stroke: 'var(--on-brass)',
      strokeWidth: 0.3,
    })
    expect(elements[2]).toMatchObject({ text: 'T-0412', attrs: { textAnchor: 'middle' } })
  })

  it('brass is for the tag plate alone', () => {
    const others = [headPlan(head), headSection(head), headScale(route, { widthMm: 150, forHand: true })]
    for (const drawing of others) expect(JSON.stringify(drawing.marks)).not.toContain('brass')
  })
})

describe('hatching', () => {
  it('stays inside its rectangle, every stroke at 45°', () => {
    const numbers = (hatchPath(10, 20, 30, 6, 1.5).match(/-?[\d.]+/g) ?? []).map(Number)
    for (let i = 0; i < numbers.length; i += 4) {
      const [x1 = NaN, y1 = NaN, x2 = NaN, y2 = NaN] = numbers.slice(i, i + 4)
      expect(x2 - x1).toBeCloseTo(y1 - y2, 6)
      expect(Math.min(x1, x2)).toBeGreaterThanOrEqual(10)
      expect(Math.max(x1, x2)).toBeLessThanOrEqual(40)
      expect(Math.min(y1, y2)).toBeGreaterThanOrEqual(20)
      expect(Math.max(y1, y2)).toBeLessThanOrEqual(26)
    }
  })
})
