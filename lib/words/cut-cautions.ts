import type { CutCaution, FlatDeckCaution } from '../core/cut/cautions'
import type { GoneDiffers } from '../core/head-now/metal-gone'
import { sinkMoreWords } from '../core/options/flat-deck-words'
import { groundWords } from '../core/options/ground-words'
import { pointLabel } from '../core/readings/points'
import { formatThou } from '../core/units/format-figure'

type Words<C extends { readonly code: string }> = {
  readonly [Code in C['code']]: (caution: Extract<C, { readonly code: Code }>) => string
}

const inches = (valueIn: number): string => `${valueIn.toFixed(4)} in`.replace('-', '−')

/** "minimum of 0.0240 in": the end of the engine maker's limits that it is past. */
const end = (side: 'under' | 'over', limitIn: number): string =>
  `${side} the engine maker’s ${side === 'under' ? 'minimum' : 'maximum'} of ${inches(limitIn)}`

const flatDeck: Words<FlatDeckCaution> = {
  'valve-past': ({ tag, valve, side, afterIn, limitIn, count, sinkMoreIn }) => {
    const others = count > 1 ? ` (${count} valves are past it, this one most)` : ''
    const where = afterIn < 0 ? `stand ${inches(-afterIn)} proud of` : `lie ${inches(afterIn)} below`
    const todo =
      side === 'under' ? `: ${sinkMoreWords(sinkMoreIn)}, or cut less` : ': new seats or valves, as the maker says'
    return `${tag}, ${pointLabel(valve)}: the valve would ${where} the deck, ${end(side, limitIn)}${others}${todo}.`
  },
  'injector-past': ({ tag, chamber, side, afterIn, limitIn }) =>
    `${tag}, chamber ${chamber}: the injector would stand ${inches(afterIn)} out of the deck, ${end(side, limitIn)}: change its washer, as the maker says, or cut less.`,
  'valves-not-known': ({ tag, needs }) => `${tag}: valves and injectors after the cut are not known. ${needs}`,
  'valves-not-read': ({ tag }) => `${tag}: how deep its valves lie is not read yet. Read it before the cut.`,
  'no-maker-limits': ({ tag }) =>
    `${tag}: the engine maker’s limits for its valves are not on the casting record. Enter them before the cut.`,
  'own-depth': ({ tag, depthIn }) => `${tag} is thicker: it is cut ${formatThou(depthIn)} to the same thickness.`,
  'no-deeper': ({ tag, depthIn, boundBy, point }) => {
    const bound = { recession: 'the valve of', protrusion: 'the injector of chamber', thickness: 'the thickness' }
    const place = point === '' ? '' : ` ${pointLabel(point).replace(/^chamber (\d+)$/, '$1')}`
    return `${tag}: without seat work no deeper than ${formatThou(depthIn)}, by ${bound[boundBy]}${place}.`
  },
}

const words: Words<CutCaution> = {
  ...flatDeck,
  steep: ({ angleDeg }) =>
    `${angleDeg.toFixed(2)}° is a steep angle: sources differ on how far one may go. The machinist in charge decides.`,
  'gone-differs': ({ tag, ...differs }) => goneDiffersText(tag, differs),
  'thickness-not-known': ({ tags, leastIn, rateProven }) => {
    const stay = leastIn === null ? '' : `, ${leastIn.toFixed(3)} in must stay`
    const rate = rateProven ? '' : ' No cut of this shop proves the rate yet: cut in two passes.'
    return `The thickness of ${tags.join(', ')} is not known: measure it before the cut${stay}.${rate}`
  },
  'land-place-not-known': () =>
    'The place of the land under the intake port is not on record: enter it, or measure the land before the cut.',
  uneven: ({ targetCc, toleranceCc, chambers }) => {
    const each = chambers.map(({ tag, chamber, finishedCc }) => `chamber ${chamber} of ${tag} (${cc(finishedCc)})`)
    return `Cutting alone cannot bring every chamber within ${toleranceCc} cc of ${targetCc}: ${each.join(', ')}. Equalise them, or open the small ones.`
  },
  'piston-to-valve': ({ port, leftIn, leastIn }) =>
    `Piston to ${port} valve would be about ${leftIn.toFixed(3)} in; the shop asks for ${leastIn.toFixed(3)}. An estimate: contact destroys an engine, so check the clearance at assembly.`,
  'seat-cut-through': ({ port, byIn, stand }) =>
    `Stop: the deck has already cut through the sealing line of the ${port} seat, by ${formatThou(byIn)} (${groundWords(stand)}). Hold the head: no cut without a new seat.`,
  'seat-near': ({ port, hold, marginIn, leastIn, stand }) => {
    const what = hold
      ? `The new deck would reach the sealing line of the ${port} seat`
      : `The sealing line of the ${port} seat would be ${formatThou(marginIn)} from the new deck; the minimum is ${formatThou(leastIn)}`
    return `${what} (${groundWords(stand)}): do not make this cut without a new seat.`
  },
  'bolts-bottom': ({ byIn }) =>
    `The bolts would bottom in their blind holes by ${formatThou(byIn)}: shorter bolts or deeper threads, as the maker of the engine says.`,
  'dowels-bottom': () =>
    'The dowels would bottom in their holes: the holes must be deepened, or the head will not seat.',
  'all-outside': () => 'Nothing is left for a last cut in house: the vendor must finish to size.',
  opening: () => 'Opening a chamber can break through into the water: pressure check when in doubt.',
  'as-said': (caution) => caution.words,
}

const cc = (value: number): string => `${value.toFixed(1)} cc`

/** A caution in whole sentences, for screens and papers. */
export function cutCautionText<Code extends CutCaution['code']>(
  caution: Extract<CutCaution, { readonly code: Code }>,
): string {
  return words[caution.code as Code](caution)
}

/**
 * Both figures of what is gone side by side: which is wrong, only the head can say. "46 thou by the thickness, 20 thou by
 * the known cuts".
 */
export const goneDiffersText = (tag: string, { corner, byCornersIn, bySumIn }: GoneDiffers): string =>
  `${tag}, ${corner.replace('-', ' edge, end ')}: removed since new ${formatThou(byCornersIn)} by the thickness, ${formatThou(bySumIn)} by the known cuts. Which is wrong? Measure the corners again, or correct what was removed before or the new thickness.`
