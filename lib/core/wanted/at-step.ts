import type { StepId } from '../route/step-ids'
import { wantedFigures, wantedGroups, wantedKeys, type WantedGroup } from './figures'
import type { Wanted, WantedFigure } from './wanted-of'

/** What is wanted at one port, or of the head: a figure, or the ends of what is wanted. */
export type WantedAt = {
  readonly port: (typeof wantedFigures)[keyof typeof wantedFigures]['port']
  readonly about: WantedFigure | null
  readonly least: WantedFigure | null
  readonly most: WantedFigure | null
}

/** One line at a bench: what is wanted, at each port that it is known for. */
export type WantedLine = { readonly group: WantedGroup; readonly at: readonly WantedAt[] }

/** Which wanted figures a step works to. Straightness stands among the figures of the finished head. */
const ofStep: Readonly<Partial<Record<StepId, readonly WantedGroup[]>>> = {
  guides: ['guide-clearance'],
  inserts: ['insert-press'],
  'seat-work': ['seat-angle', 'seat-width', 'runout', 'recession', 'stem-height'],
  heights: ['lift', 'installed-height', 'coil-bind'],
  'flat-cut': ['thickness'],
  springs: ['lift', 'installed-height', 'seat-pressure', 'open-pressure', 'coil-bind'],
}

/**
 * The wanted figures of some groups, as lines.
 *
 * By definition: the figures of a group, its ports in order; a group of which nothing is known has no line.
 * Example: seat width 0.060 intake alone → one line, at "intake".
 */
export function wantedLines(groups: readonly WantedGroup[], wanted: Wanted): readonly WantedLine[] {
  return groups.flatMap((group) => {
    const known = wantedKeys.filter((key) => wantedFigures[key].group === group && wanted[key])
    const ports = [...new Set(known.map((key) => wantedFigures[key].port))]
    const at = ports.map((port): WantedAt => {
      const part = (name: 'about' | 'least' | 'most'): WantedFigure | null => {
        const key = known.find((one) => wantedFigures[one].port === port && wantedFigures[one].part === name)
        return (key && wanted[key]) ?? null
      }
      return { port, about: part('about'), least: part('least'), most: part('most') }
    })
    return at.length === 0 ? [] : [{ group, at }]
  })
}

/**
 * What a step of a head works to; nothing for a step that has no wanted figure.
 *
 * By definition: as the table says. Example: the guides → "guide-clearance".
 */
export const wantedAtStep = (stepId: StepId, wanted: Wanted): readonly WantedLine[] =>
  wantedLines(ofStep[stepId] ?? [], wanted)

/** Everything that is wanted of a head, in the order of the form. By definition: all groups. Example: none known → []. */
export const allWanted = (wanted: Wanted): readonly WantedLine[] => wantedLines(wantedGroups, wanted)
