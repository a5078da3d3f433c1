import {
  at,
  ellipsePath,
  filled,
  hatchPath,
  linePath,
  outlined,
  stroked,
  text,
  type Drawing,
  type Mark,
  type Point,
} from './marks'

/** All chambers as measured at one stage of the work. */
export type TrendStage = {
  readonly label: string
  readonly jobNumber: string
  /** By chamber; null: not measured here. */
  readonly ccs: readonly (number | null)[]
  /** As typed, to stand at the points. */
  readonly texts: readonly (string | null)[]
  /** Valves and plug; '' when not noted. */
  readonly fitted: string
  readonly target: { readonly cc: number; readonly toleranceCc: number } | null
}

type Setting = { readonly title: string; readonly widthMm: number }

type Strip = {
  readonly chamber: number
  readonly topMm: number
  readonly y: (cc: number) => number
}

const leftMm = 9
const headMm = 9
const stripMm = 15
/** Room in a strip over its highest figure, for the words at the point. */
const overMm = 5.2
const underMm = 2
const labelsMm = 27
const figureMm = 3

/**
 * One strip a chamber, its volume at each stage in order, all strips on one scale. Every point has its figure beside it.
 * A line joins what was measured alike; dashed where nobody noted the valves and plug; broken by two strokes where they
 * differ, for then the two figures say nothing of each other. The hatched band is the target with its tolerance.
 */
export function chamberTrendDrawing(stages: readonly TrendStage[], { title, widthMm }: Setting): Drawing {
  const chambers = Math.max(0, ...stages.map(({ ccs }) => ccs.length))
  const x = (place: number): number => leftMm + ((place + 0.5) * (widthMm - leftMm)) / Math.max(1, stages.length)
  const half = (widthMm - leftMm) / Math.max(1, stages.length) / 2
  const footMm = headMm + chambers * stripMm
  const scale = scaleOf(stages)
  const strips = Array.from({ length: chambers }, (_, place): Strip => {
    const topMm = headMm + place * stripMm
    const roomMm = stripMm - overMm - underMm
    return { chamber: place + 1, topMm, y: (cc) => topMm + overMm + (1 - scale(cc)) * roomMm }
  })
  return {
    widthMm,
    heightMm: footMm + labelsMm,
    title,
    description: inWords(stages, chambers),
    marks: [
      ...jobs(stages, x, half, footMm),
      ...strips.flatMap((strip) => stripMarks(strip, stages, x, half, widthMm)),
      ...stages.flatMap(({ label }, place) =>
        text([x(place) + 1, footMm + 2.5], label, figureMm, { anchor: 'end', turnDeg: -90, face: 'text' }),
      ),
    ],
  }
}

/** Where a volume lies between the least and the most that is drawn: 0 to 1; all alike in the middle. */
function scaleOf(stages: readonly TrendStage[]): (cc: number) => number {
  const all = stages.flatMap(({ ccs, target }) => [
    ...ccs.filter((cc) => cc !== null),
    ...(target ? [target.cc - target.toleranceCc, target.cc + target.toleranceCc] : []),
  ])
  const [least, most] = [Math.min(...all), Math.max(...all)]
  return (cc) => (most > least ? (cc - least) / (most - least) : 0.5)
}

/** The job of each run of stages, and a rule where one visit ends and the next begins. */
function jobs(stages: readonly TrendStage[], x: (place: number) => number, half: number, footMm: number): Mark[] {
  return stages.flatMap(({ jobNumber }, place) => {
    if (stages[place - 1]?.jobNumber === jobNumber) return []
    const leftEdge = x(place) - half
    return [
      ...(place === 0 ? [] : stroked(linePath([leftEdge, 1], [leftEdge, footMm]), 'ink', 0.2, [0.8, 0.8])),
      ...text([leftEdge + 1, 4.5], `job ${jobNumber}`, figureMm, { face: 'text' }),
    ]
  })
}

function stripMarks(
  strip: Strip,
  stages: readonly TrendStage[],
  x: (place: number) => number,
  half: number,
  widthMm: number,
): Mark[] {
  const base = strip.topMm + stripMm
  const taken = stages.flatMap((stage, place) => {
    const cc = stage.ccs[strip.chamber - 1] ?? null
    return cc === null
      ? []
      : [{ stage, words: stage.texts[strip.chamber - 1] ?? String(cc), at: [x(place), strip.y(cc)] as Point }]
  })
  return [
    ...bands(strip, stages, x, half),
    ...stroked(linePath([0, base], [widthMm, base]), 'faint', 0.2),
    ...text([0, strip.topMm + stripMm / 2 + 2.5], `no. ${strip.chamber}`, figureMm, { bold: true }),
    ...joins(taken),
    ...taken.flatMap(({ at: place, stage }) =>
      (stage.fitted === '' ? outlined : filled)(ellipsePath(place, 0.8), 'ink', 0.3),
    ),
    ...taken.flatMap(({ at: [px, py], words }) => text([px, py - 1.8], words, figureMm, { anchor: 'middle' })),
  ]
}

/** One band over all stages in a row that share a target. */
function bands(strip: Strip, stages: readonly TrendStage[], x: (place: number) => number, half: number): Mark[] {
  const marks: Mark[] = []
  let from = 0
  stages.forEach(({ target }, place) => {
    const next = stages[place + 1]?.target ?? null
    if (next && target && next.cc === target.cc && next.toleranceCc === target.toleranceCc) return
    if (target) marks.push(...band(strip, target, x(from) - half, x(place) + half))
    from = place + 1
  })
  return marks
}

function band(
  { y }: Strip,
  { cc, toleranceCc }: { cc: number; toleranceCc: number },
  left: number,
  right: number,
): Mark[] {
  const [top, bottom] = [y(cc + toleranceCc), y(cc - toleranceCc)]
  return [
    ...stroked(hatchPath(left, top, right - left, bottom - top, 1.2), 'faint', 0.15),
    ...stroked(linePath([left, top], [right, top]) + linePath([left, bottom], [right, bottom]), 'faint', 0.15),
  ]
}

type Taken = { readonly stage: TrendStage; readonly at: Point }

function joins(taken: readonly Taken[]): Mark[] {
  const pairs = taken.slice(1).map((to, place) => ({ from: taken[place] ?? to, to }))
  const path = (of: typeof pairs): string => of.map(({ from, to }) => `M${at(from.at)}L${at(to.at)}`).join('')
  const differs = pairs.filter(({ from, to }) => isBreak(from.stage, to.stage))
  const unsure = pairs.filter(({ from, to }) => from.stage.fitted === '' || to.stage.fitted === '')
  const alike = pairs.filter((pair) => !differs.includes(pair) && !unsure.includes(pair))
  return [
    ...stroked(path(alike), 'ink', 0.45),
    ...stroked(path(unsure), 'ink', 0.3, [1.2, 1]),
    ...stroked(differs.map(({ from, to }) => breakPath(from.at, to.at)).join(''), 'ink', 0.35),
  ]
}

const isBreak = (from: TrendStage, to: TrendStage): boolean =>
  from.fitted !== '' && to.fitted !== '' && from.fitted !== to.fitted

/** Two slanted strokes half way. */
function breakPath([x1, y1]: Point, [x2, y2]: Point): string {
  const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2]
  const stroke = (shift: number) => linePath([x + shift - 0.7, y + 1.8], [x + shift + 0.7, y - 1.8])
  return stroke(-0.6) + stroke(0.6)
}

function inWords(stages: readonly TrendStage[], chambers: number): string {
  return Array.from({ length: chambers }, (_, place) => {
    const read = stages.flatMap(({ label, texts, jobNumber }) => {
      const words = texts[place] ?? null
      return words === null ? [] : [`${words} cc ${label} (job ${jobNumber})`]
    })
    return `Chamber ${place + 1}: ${read.length === 0 ? 'not measured' : read.join(', ')}.`
  }).join(' ')
}
