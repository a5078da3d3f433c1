import { typedFigure } from '@/lib/core/units/typed-figure'
import { wantedFigures, wantedKeys, type WantedFigures } from '@/lib/core/wanted/figures'
import { changesBetween } from '@/lib/data/audit-trail'

/** Each figure by its name in the trail, as it was typed; '' where none is wanted. */
const typedWanted = (figures: WantedFigures): Record<string, string> =>
  Object.fromEntries(
    wantedKeys.map((key) => {
      const figure = figures[key]
      return [`wanted.${key}`, figure ? typedFigure(figure) : '']
    }),
  )

/** What a change of wanted figures changed, for the trail and for a conflict. */
export const wantedChanges = (before: WantedFigures, after: WantedFigures) =>
  changesBetween(typedWanted(before), typedWanted(after))

/** Those that were said at booking, for the trail. */
export const wantedSaid = (figures: WantedFigures): Record<string, string> =>
  Object.fromEntries(Object.entries(typedWanted(figures)).filter(([, text]) => text !== ''))

/** What a figure is called where both sides of a conflict are shown. */
export const wantedNames: Readonly<Record<string, string>> = Object.fromEntries(
  wantedKeys.map((key) => [`wanted.${key}`, wantedFigures[key].label]),
)
