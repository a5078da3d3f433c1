import type { BenchFigure, NeededBy } from '../core/at-bench/bench-figure'
import { gapWording } from '../core/intake/face-cut'
import { figureName } from '../core/options/figure-names'
import { makerLimitsWords } from '../core/options/flat-deck-words'
import { pointLabel } from '../core/readings/points'
import { capital } from '../core/route/words'
import { formatFigure } from '../core/units/format-figure'
import type { BenchLine } from './bench-line'
import { wantedLine, wantedSentence } from './wanted'
import { leastMeasuredIn } from '../core/units/least-measured'

const thou = (valueIn: number): string => formatFigure(valueIn, 'cutDepth', 'thou')
const line = (label: string, value: string, note = ''): BenchLine => ({ label, value, note })

const faceEnds = {
  all: 'Cut off the intake face',
  deck: 'Cut off the intake face, deck side',
  cover: 'Cut off the intake face, cover side',
} as const

const ofWords: Readonly<Record<NeededBy, string>> = {
  'intake-side': 'Intake side',
  'spot-face': 'Bolt seats',
  'bolt-fit': 'Bolt holes',
  'bolt-reach': 'Bolt reach',
  'dowel-fit': 'Dowels',
  rocker: 'Rocker stand',
  cam: 'Cam',
  'ptv-intake': 'Piston to intake valve',
  'ptv-exhaust': 'Piston to exhaust valve',
  corners: 'Corners',
  sink: 'Sink within the cc target',
}

/** "Slot, holes 1, 3" · "12.5 thou" · "at the top, toward the intake edge". Depths in thou, thickness in inches. */
export function benchLine(figure: BenchFigure): BenchLine {
  switch (figure.code) {
    case 'leave-face':
      return line('Intake face', 'leave it', 'the ports still meet')
    case 'face-cut':
      return line(faceEnds[figure.end], thou(figure.valueIn), intakeNote(figure.end))
    case 'face-gap':
      return line('Gap at the intake face', thou(figure.valueIn), gapWording)
    case 'rails-cut':
      return line(
        'Cut off each manifold end rail',
        thou(figure.valueIn),
        'so that the manifold comes down with the ports',
      )
    case 'rails-gap':
      return line('Gap at the manifold end rails', thou(figure.valueIn), 'seal it, or a thicker rail gasket')
    case 'port-drop':
      return line(
        'Ports come down along the intake face',
        thou(figure.valueIn),
        'leave, port match, or move the manifold',
      )
    case 'spot-face':
      return line(
        'Cut each bolt seat, high side',
        thou(figure.valueIn),
        `at the ${figure.highSide} edge of a ${figure.acrossIn.toFixed(3)} in spot face, nothing at the other`,
      )
    case 'leave-seats':
      return line('Bolt seats', 'leave them', `they lean less than ${thou(leastMeasuredIn)}`)
    case 'slot':
      return line(
        `Slot, ${holeWords(figure.holes)}`,
        thou(figure.valueIn),
        `at the top, toward the ${figure.toward} edge`,
      )
    case 'no-slot':
      return line('No slot', holeWords(figure.holes), 'the bolts pass as the holes are')
    case 'thread-left':
      return line('Thread left in a blind hole', leftValue(figure.valueIn), leftNote(figure, 'the bolt bottoms'))
    case 'dowel-left':
      return line('Depth left in the dowel holes', leftValue(figure.valueIn), leftNote(figure, 'the dowels bottom'))
    case 'rocker-down':
      return line('Rocker stand comes down', thou(figure.valueIn))
    case 'pushrod-longer':
      return line('Pushrod is longer by', thou(figure.valueIn), 'as far as the rocker is concerned')
    case 'cam-down':
      return line('Cam comes down', thou(figure.valueIn), 'the timing retards: check it with the engine maker’s data')
    case 'cam-slack':
      return line('Chain or belt gets slack by', thou(figure.valueIn))
    case 'ptv-loss':
      return line(
        `Piston to ${figure.port} valve`,
        `${figure.valueIn < 0 ? 'gains' : 'loses'} ${thou(Math.abs(figure.valueIn))}`,
        'against a flat crown: check at assembly',
      )
    case 'ptv-left':
      return line(
        `Left at the ${figure.port} valve`,
        formatFigure(figure.valueIn, 'clearance'),
        `minimum ${formatFigure(figure.minimumIn, 'clearance')}${figure.valueIn < figure.minimumIn ? ': too little' : ''}`,
      )
    case 'target':
      return line(
        'Target, each chamber',
        formatFigure(figure.valueCc, 'chamberVolume'),
        `± ${formatFigure(figure.toleranceCc, 'chamberVolume')}`,
      )
    case 'corner':
      return line(`Corner ${pointLabel(figure.corner)}`, formatFigure(figure.valueIn, 'thickness'), 'expected')
    case 'straight':
      return line(
        'Straightness limit',
        `${formatFigure(figure.acrossIn, 'depth')} across`,
        `${formatFigure(figure.alongIn, 'depth')} along`,
      )
    case 'finish':
      return line('Finish wanted', figure.asked)
    case 'marks':
      return line(
        'Marks expected',
        `${bareThou(figure.intakeIn)} int / ${bareThou(figure.exhaustIn)} exh`,
        'thou at each edge',
      )
    case 'seat-circle':
      return line(
        `Measure to the ${figure.port} top-cut circle`,
        `${figure.diameterIn.toFixed(3)} in across`,
        'from the deck, where the circle is nearest to it',
      )
    case 'sink-planned':
      return line(
        'Sink that the planned cut counts on',
        thou(figure.valueIn),
        `every valve alike; it adds ${formatFigure(figure.valueCc, 'volume')} to each chamber`,
      )
    case 'sink-room':
      return line('Sink the cc target still allows', sinkValue(figure), sinkNote(figure))
    case 'wanted':
      return wantedLine(figure.line)
    case 'maker-limits':
      return line(
        figure.what === 'injector' ? 'Injector protrusion' : `${capital(figure.what)} valves below the deck`,
        makerLimitsWords(figure),
      )
    case 'thickness-least':
      return line('Minimum thickness', formatFigure(figure.valueIn, 'thickness'), 'at every corner')
    case 'needs':
      return line(ofWords[figure.of], 'not known', `needs ${figure.needs.map(figureName).join(', ')}`)
    case 'cannot':
      return line(ofWords[figure.of], 'not known', figure.why)
  }
}

const intakeNote = (end: 'all' | 'deck' | 'cover'): string =>
  end === 'all' ? 'leave, port match or cut: choose below' : ''
const bareThou = (valueIn: number): string => String(Number((valueIn * 1000).toFixed(1)))
const holeWords = (holes: readonly string[]): string =>
  holes.length === 0 ? 'every hole' : `${holes.length === 1 ? 'hole' : 'holes'} ${holes.join(', ')}`

type SinkFigure = Extract<BenchFigure, { code: 'sink-room' }>

/** Down to a tenth of a thou: what is read here is sunk. */
const sinkThou = (valueIn: number): string => thou(Math.floor(valueIn * 10_000 + 1e-6) / 10_000)

/** "9.1 thou to 60.0 cc, at most 14.9 thou"; "none: 60.7 cc is over the target of 60.0 ± 0.5 cc". */
function sinkValue({ cc, targetCc, toleranceCc, toTargetIn, mostIn }: SinkFigure): string {
  const target = formatFigure(targetCc, 'chamberVolume')
  if (mostIn <= 0) {
    return `none: ${formatFigure(cc, 'chamberVolume')} is past ${target} ± ${formatFigure(toleranceCc, 'chamberVolume')}`
  }
  return toTargetIn > 0
    ? `${sinkThou(toTargetIn)} to ${target}, at most ${sinkThou(mostIn)}`
    : `at most ${sinkThou(mostIn)}`
}

/** "every valve alike; chamber 2, the largest, holds 59.2 cc; 1 thou adds 0.087 cc". */
function sinkNote({ chamber, cc, ccPerThou, isReckoned }: SinkFigure): string {
  const holds = `${pointLabel(chamber)}, the largest, holds ${formatFigure(cc, 'chamberVolume')}`
  const how = isReckoned ? ' (worked out from the chambers read after the cut)' : ''
  return `every valve alike; ${holds}${how}; 1 thou adds ${ccPerThou.toFixed(3)} cc`
}

/** "20.0 thou"; where nothing is left: "72.2 thou too little". */
const leftValue = (valueIn: number): string => (valueIn < 0 ? `${thou(-valueIn)} too little` : thou(valueIn))

function leftNote({ valueIn, minimumIn }: { valueIn: number; minimumIn: number }, bottoms: string): string {
  return valueIn < minimumIn
    ? `${bottoms}: stop, tell the machinist in charge`
    : 'after all cuts; bolts and torque as the maker says'
}

/** Places and limits that a figure on paper cannot do without; the rest of what a screen says stays there. */
const placed: ReadonlySet<BenchFigure['code']> = new Set([
  ...([
    'spot-face',
    'slot',
    'ptv-left',
    'target',
    'straight',
    'marks',
    'needs',
    'cannot',
    'sink-planned',
    'sink-room',
  ] as const),
])

/** For paper: "Slot, holes 1, 3: 12.5 thou, at the top, toward the intake edge; No slot: hole 2". */
export function benchSentence(figures: readonly BenchFigure[]): string {
  const others = figures.filter(({ code }) => code !== 'corner' && code !== 'seat-circle' && code !== 'wanted')
  return [wantedOf(figures), circlesSentence(figures), cornersSentence(figures), ...others.map(sentence)]
    .filter((part) => part !== '')
    .join('; ')
}

const wantedOf = (figures: readonly BenchFigure[]): string =>
  wantedSentence(figures.flatMap((figure) => (figure.code === 'wanted' ? [figure.line] : [])))

function sentence(figure: BenchFigure): string {
  const { label, value, note } = benchLine(figure)
  return [`${label}: ${value}`, placed.has(figure.code) ? note : ''].filter((part) => part !== '').join(', ')
}

/** "Corners expected: intake end 1 4.4800 in, exhaust end 1 4.4170 in" */
function cornersSentence(figures: readonly BenchFigure[]): string {
  const corners = figures.flatMap((figure) =>
    figure.code === 'corner' ? [`${pointLabel(figure.corner)} ${formatFigure(figure.valueIn, 'thickness')}`] : [],
  )
  return corners.length === 0 ? '' : `Corners expected: ${corners.join(', ')}`
}

/** "Measure to the top-cut circle at its nearest point: intake 2.115 in across, exhaust 1.660 in across" */
function circlesSentence(figures: readonly BenchFigure[]): string {
  const circles = figures.flatMap((figure) =>
    figure.code === 'seat-circle' ? [`${figure.port} ${figure.diameterIn.toFixed(3)} in across`] : [],
  )
  return circles.length === 0 ? '' : `Measure to the top-cut circle at its nearest point: ${circles.join(', ')}`
}
