import { formatFigure, formatThou } from '@/lib/core/units/format-figure'
import type { Dossier } from '../dossier'
import { newestText } from '../reading-text'
import { wasCut } from '../measured-cut'
import { removedWords } from './spec-cuts'

/**
 * What somebody must know before the head goes on. Each stands here only when its own figure passes the shop's limit, or
 * when the bench wrote that the customer is to be told; any deck cut brings the makers' instructions.
 */
export function cautionsOf(head: Dossier): string[] {
  if (!wasCut(head)) return []
  return [
    ...pistonToValve(head),
    ...steepAngle(head),
    ...thicknessUnknown(head),
    ...toBeChecked(head),
    ...flatDeckCaution(head),
    'Deck thickness, gasket choice and torque follow the head, gasket and engine makers’ instructions.',
  ]
}

/** Injectors come out for the mill: what was read here holds for the washers that were in. */
const flatDeckCaution = ({ facts }: Dossier): string[] =>
  facts.flatDeck
    ? [
        'Flat deck: check valve recession and injector protrusion at assembly, with the washers that go in, against the engine maker’s limits.',
      ]
    : []

function pistonToValve({ facts, plan, newest: readings, settings }: Dossier): string[] {
  const lossIn = facts.plan?.ptvLossIn ?? null
  const remainingIn = facts.remainingPtvIn === null ? null : facts.remainingPtvIn - (lossIn ?? 0)
  const near =
    (lossIn !== null && lossIn > settings.ptvLossLimitIn) ||
    (remainingIn !== null && remainingIn < settings.ptvRemainingLimitIn)
  const answer = newestText(readings, 'ptv')
  if ((!near && answer !== 'told') || answer === 'measured') return []
  const loss = (port: string, valueIn: number | null | undefined): string =>
    valueIn === null || valueIn === undefined ? '' : `${port} ${formatThou(valueIn)}`
  const losses = [loss('intake', plan?.ptvLossIntakeIn), loss('exhaust', plan?.ptvLossExhaustIn)].filter(
    (part) => part !== '',
  )
  const computed = losses.length === 0 ? '' : ` The computed loss, ${losses.join(', ')}, is an estimate.`
  return [`Piston to valve: check the clearance at assembly. Contact destroys an engine.${computed}`]
}

function steepAngle({ facts, settings }: Dossier): string[] {
  const angleDeg = facts.plan?.angleDeg ?? 0
  if (angleDeg <= settings.angleCautionDeg) return []
  return [
    `The plan has an angle of ${angleDeg.toFixed(2)}°: check bolts, dowels, pushrods, manifold and headers on the engine before it is closed.`,
  ]
}

function thicknessUnknown(head: Dossier): string[] {
  if (!removedWords(head).startsWith('new thickness unknown')) return []
  return ['The new thickness of this head is not on record, so the deck left cannot be compared with it.']
}

/** What the bench could not check here and said the customer is told. */
function toBeChecked({ newest: readings, facts, settings }: Dossier): string[] {
  const told = (kind: 'geometry-note' | 'cam-note' | 'trial-fit'): boolean => newestText(readings, kind) === 'told'
  const goneIn = facts.plan?.deepestIn ?? 0
  return [
    told('geometry-note')
      ? `Rocker geometry and pushrod length are to be checked at assembly${goneIn > settings.rockerLimitIn ? `: the deck came down by about ${formatFigure(goneIn, 'cutDepth')}` : ''}.`
      : '',
    told('cam-note') ? 'Cam timing retards with the deck: check it at assembly.' : '',
    told('trial-fit') ? 'Manifold, headers and covers were not tried on: check them before assembly.' : '',
  ].filter((caution) => caution !== '')
}
