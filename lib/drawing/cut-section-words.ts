import { formatFigure, formatThou } from '@/lib/core/units/format-figure'
import { roughWidth } from './dimension'
import type { CutSectionInput, PlacedValve, SeatMark, SectionGeometry } from './cut-section-types'

const circleWords: Readonly<Record<SeatMark['name'], string>> = {
  insert: 'insert edge',
  'top-cut': 'top cut',
  sealing: 'sealing line',
  'valve-rim': 'valve rim',
}

export const noWidthWords = 'drawn to a usual width; the record has none'

export const degrees = (angleDeg: number): string => `${angleDeg.toFixed(2)}°`

/** Whether the cut has gone past a circle; a sealing line may not even be reached. */
const isLost = ({ name, overDeckIn }: SeatMark): boolean => (name === 'sealing' ? overDeckIn <= 0 : overDeckIn < 0)

const gravest: readonly SeatMark['name'][] = ['sealing', 'top-cut']

/** The circle of a seat worth telling of: the gravest of those the cut takes, else the nearest to the new deck. */
export const tellingCircle = ({ circles, nearest }: PlacedValve): SeatMark & { readonly lost: boolean } => {
  const found = gravest.flatMap((name) => circles.filter((circle) => circle.name === name && isLost(circle)))
  const circle = found[0] ?? nearest
  return { ...circle, lost: isLost(circle) }
}

export const mustHold = (valve: PlacedValve): boolean => {
  const { name, lost } = tellingCircle(valve)
  return lost && name === 'sealing'
}

/** The seat's nearest circle and how far the new deck keeps from it, or what of the seat the cut takes. */
export function seatWords(valve: PlacedValve): string {
  const { name, overDeckIn, lost } = tellingCircle(valve)
  const circle = `${valve.port} ${circleWords[name]}`
  if (!lost) return `${circle}, ${formatThou(overDeckIn)} clear`
  return `${mustHold(valve) ? 'hold: ' : ''}${circle}, ${formatThou(-overDeckIn)} cut away`
}

export const isCut = ({ flatIn, slope }: SectionGeometry['motion']): boolean => flatIn > 0 || slope > 0

export function nearestOf({ valves }: SectionGeometry): PlacedValve | null {
  const [first, ...others] = valves
  if (!first) return null
  return others.reduce((a, b) => (b.nearest.overDeckIn < a.nearest.overDeckIn ? b : a), first)
}

function cutWords(geometry: SectionGeometry, { deepEdge }: CutSectionInput): string {
  const { motion, refused, depthsIn, angleDeg } = geometry
  if (refused !== null) return `This cut cannot be drawn. ${refused}`
  if (!isCut(motion)) return 'No cut.'
  if (motion.slope === 0) return `Flat cut, ${formatThou(motion.flatIn)} at both edges.`
  const shallowEdge = deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  const angle = angleDeg === null ? '' : `, ${degrees(angleDeg)}`
  return (
    `${motion.flatIn > 0 ? 'Angle and flat cut' : 'Angle cut'}${angle}: ${formatThou(depthsIn.shallow)} at the ` +
    `${shallowEdge} edge, ${formatThou(depthsIn.deep)} at the ${deepEdge} edge, which is the deep edge.`
  )
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`

/** The drawing in words: the cut, the seats, nearest first, and what could not be drawn. */
export function sectionInWords(geometry: SectionGeometry, input: CutSectionInput): string {
  const nearest = nearestOf(geometry)
  const others = geometry.valves.filter((valve) => valve !== nearest)
  return [
    cutWords(geometry, input),
    geometry.widthKnown ? `Milled width ${formatFigure(geometry.widthIn, 'milledWidth')}.` : sentence(noWidthWords),
    ...(nearest ? [`Nearest to the new deck: ${seatWords(nearest)}.`] : []),
    ...others.map((valve) => sentence(seatWords(valve))),
    ...notes(geometry),
  ].join(' ')
}

/** What one must know to read the drawing; the same for every cut of a casting. */
export function notes({ opening, valves, missing, widened, chamber, oneBehindOther }: SectionGeometry): string[] {
  const opened = {
    outline: [],
    area: ['Opening drawn as a circle of its area.'],
    perimeter: ['Opening drawn as a circle of its perimeter: a first guess.'],
  } as const
  const withSeats = valves.some(({ nearest }) => nearest.name !== 'valve-rim')
  return [
    ...(!chamber
      ? []
      : valves.length > 0
        ? ['Chamber roof, ports and sides are a sketch; all else is to scale.']
        : ['The height of the chamber is a sketch; all else is to scale.']),
    ...(opening ? opened[opening.source] : []),
    ...(widened ? ['The seats reach past it: the chamber is drawn wider.'] : []),
    ...(withSeats ? ['At a seat, from the valve outward: sealing line (heavy), top cut, insert edge.'] : []),
    ...(oneBehindOther ? ['The exhaust valve stands behind the intake valve.'] : []),
    ...(missing.length > 0 ? [`Not in the record: ${missing.join('; ')}.`] : []),
  ]
}

/** Words broken into lines that fit, by rough width. */
export function wrapped(words: string, widthMm: number, sizeMm: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of words.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line === '' || roughWidth(longer, sizeMm) <= widthMm) line = longer
    else {
      lines.push(line)
      line = word
    }
  }
  return line === '' ? lines : [...lines, line]
}
