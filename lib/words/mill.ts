import type { MillAdvice } from '../core/at-mill/advice'
import type { Further } from '../core/at-mill/further-readings'

/** What the card at the mill says: a line to read at arm's length, and why. */
export type MillWords = {
  /** "Cut to 18.0. 15.5 is off: 2.5 more." */
  readonly headline: string
  readonly why: string
  /** '' when nothing follows. */
  readonly then: string
}

export type MillNumbers = { readonly targetCc: number; readonly toleranceCc: number }

const cc = (value: number): string => `${value.toFixed(1)} cc`
const thou = (value: number): string => value.toFixed(1)

/** The next thing to do, in words. */
export function millWords(advice: MillAdvice, { targetCc, toleranceCc }: MillNumbers): MillWords {
  switch (advice.code) {
    case 'not-measured':
      return said(
        'Measure the chambers first.',
        'The chambers of this head have not been measured.',
        'Take back the tick of the chambers at the measuring bench, or read them there.',
      )
    case 'question':
      return questionWords(advice)
    case 'cut':
      return said(
        cutHeadline(advice),
        whyNoDeeper(advice, targetCc - toleranceCc),
        `Then cc chamber ${advice.thenRead}.`,
      )
    case 'read-now':
      return said(
        `cc chamber ${advice.chamber} now${advice.isSmallest ? ' (the smallest)' : ''}.`,
        `${thou(advice.offThou)} thou is off. The next cut depends on what the chamber holds now.`,
      )
    case 'read-more':
      return said(furtherText(advice.further, advice.provesCc), readMoreWhy(advice.provesCc, toleranceCc))
    case 'too-coarse':
      return said(
        'Use a finer burette.',
        advice.provesCc === null
          ? `More readings do not help: its division is too coarse for a tolerance of ${cc(toleranceCc)}.`
          : `More readings do not help: its division is too coarse to prove the minimum of ${cc(advice.provesCc)}.`,
      )
    case 'whole-way':
      return said(
        'Nothing more to cut.',
        `${thou(advice.offThou)} thou is off, the whole way. The rate is proven: the finished check reads the cc.`,
        'Save and done.',
      )
    case 'nothing':
      return said(
        advice.atTarget ? 'Nothing to cut: at the target.' : `Nothing to cut: within ${cc(toleranceCc)}.`,
        advice.atTarget ? `The target is ${cc(targetCc)}.` : 'Another pass could go past the target.',
        'Save and done.',
      )
    default:
      return stopWords(advice, targetCc, toleranceCc)
  }
}

const said = (headline: string, why: string, then = ''): MillWords => ({ headline, why, then })

function cutHeadline({ stopAtThou, offThou, moreThou }: Extract<MillAdvice, { code: 'cut' }>): string {
  const off = offThou > 0 ? ` ${thou(offThou)} is off: ${thou(moreThou)} more.` : ''
  return `Cut to ${thou(stopAtThou)}.${off}`
}

function whyNoDeeper({ bound, nominalThou }: Extract<MillAdvice, { code: 'cut' }>, leastCc: number): string {
  switch (bound) {
    case 'nominal':
      return 'The whole way to the target.'
    case 'tolerance':
      return `Not all ${nominalThou} at once: it could end under ${cc(leastCc)}.`
    case 'class-minimum':
      return 'The smallest chamber must stay over the class minimum.'
    case 'unproven':
      return `Half of ${nominalThou}: too few cuts are behind the rate.`
    case 'doubted':
      return `Half of ${nominalThou}: the newest cuts disagree with the casting record.`
    case 'screened':
      return `Not all ${nominalThou} at once: another cut of this casting took more, and nobody has answered for it.`
  }
}

function questionWords({ tookCc, expectedCc, depthThou }: Extract<MillAdvice, { code: 'question' }>): MillWords {
  return said(
    'Read the chamber again.',
    `${thou(depthThou)} thou took ${cc(tookCc)}; about ${cc(expectedCc)} was expected. One of the figures may be wrong: the cc before, the cc now, or the depth.`,
    'Read again or correct the wrong figure. If all are right, the owner counts the cut on the head’s page.',
  )
}

/** "2 more readings of chamber 3, 1 of chamber 1" */
function furtherText(further: readonly Further[], provesCc: number | null): string {
  const parts = further.map(({ chamber, readings }, at) =>
    at === 0
      ? `${readings} more ${readings === 1 ? 'reading' : 'readings'} of chamber ${chamber}`
      : `${readings} of chamber ${chamber}`,
  )
  const proves = provesCc === null ? '' : `: too few to prove ${cc(provesCc)} minimum`
  return `${parts.join(', ')}${proves}.`
}

const readMoreWhy = (provesCc: number | null, toleranceCc: number): string =>
  provesCc === null
    ? `The cc readings are too few for a tolerance of ${cc(toleranceCc)}.`
    : 'Any cut could take the smallest chamber under the class minimum.'

function stopWords(
  advice: Extract<MillAdvice, { code: 'hold' | 'no-safe-pass' | 'refused' }>,
  targetCc: number,
  toleranceCc: number,
): MillWords {
  if (advice.code === 'refused') return said('Do not cut.', advice.message, 'Put the head on hold and get the owner.')
  if (advice.code === 'hold') {
    return advice.under === 'target'
      ? said(
          'Do not cut. Put the head on hold.',
          `The chambers are more than ${cc(toleranceCc)} under the target of ${cc(targetCc)}.`,
          'The owner decides.',
        )
      : said(
          'Do not cut. Put the head on hold.',
          'The smallest chamber is under the class minimum.',
          'The owner decides.',
        )
  }
  return advice.bound === 'class-minimum'
    ? said(
        'Do not cut. Open the other chambers, or ask the owner.',
        'Half a thou could take the smallest chamber under the class minimum.',
        'Put the head on hold if the plan must change.',
      )
    : said(
        'Do not cut. Ask the owner.',
        `Half a thou could already end more than ${cc(toleranceCc)} under the target.`,
        'Put the head on hold if the plan must change.',
      )
}
