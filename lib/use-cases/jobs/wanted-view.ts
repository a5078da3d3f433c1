import { hasLeft } from '@/lib/dossier/has-left'
import { typedWantedKeys, wantedFigures, type TypedWantedKey, type WantedFigures } from '@/lib/core/wanted/figures'
import { wantedOf, type Wanted } from '@/lib/core/wanted/wanted-of'
import { formatFigure } from '@/lib/core/units/format-figure'
import type { Dossier } from '@/lib/dossier/dossier'
import { wantedForm, type WantedForm } from '@/lib/schemas/wanted'
import { wantedPlaceWords, wantedWords, type WantedWords } from '@/lib/words/wanted'

/** What holds where a field is left empty: "0.0550 in, casting record". */
export type WantedHints = Readonly<Partial<Record<TypedWantedKey, string>>>

/** With the heads that it is for. */
export type WantedList = WantedWords & { readonly tags: readonly string[] }

export type WantedOfHead = {
  readonly visitId: string
  readonly tag: string
  readonly version: number
  readonly own: WantedForm
  readonly hints: WantedHints
}

export type WantedView = {
  readonly lists: readonly WantedList[]
  readonly own: WantedForm
  readonly hints: WantedHints
  /** Heads that may still depart from it: those that are not released. */
  readonly heads: readonly WantedOfHead[]
}

const hintsOf = (wanted: Wanted): WantedHints =>
  Object.fromEntries(
    typedWantedKeys.flatMap((key) => {
      const figure = wanted[key]
      if (!figure) return []
      return [
        [key, `Empty: ${formatFigure(figure.value, wantedFigures[key].quantity)}, ${wantedPlaceWords(figure.from)}`],
      ]
    }),
  )

const nothing: WantedFigures = {}

/** What the job's page shows of the wanted figures: heads that are told the same stand together. */
export function wantedView(heads: readonly Dossier[]): WantedView {
  const [first] = heads
  return {
    lists: listsOf(heads),
    own: wantedForm(typedWantedKeys, first?.wantedBy.job ?? nothing),
    hints: first ? hintsOf(wantedOf({ ...first.wantedBy, head: nothing, job: nothing })) : {},
    heads: heads
      .filter(({ visit }) => visit.releases.length === 0 && !hasLeft(visit))
      .map(({ visit, label, wantedBy }) => ({
        visitId: visit.id,
        tag: label,
        version: visit.version,
        own: wantedForm(typedWantedKeys, wantedBy.head),
        hints: hintsOf(wantedOf({ ...wantedBy, head: nothing })),
      })),
  }
}

function listsOf(heads: readonly Dossier[]): readonly WantedList[] {
  const lists = new Map<string, WantedWords & { tags: string[] }>()
  for (const { label, wanted } of heads) {
    const shown = wantedWords(wanted)
    const same = lists.get(JSON.stringify(shown))
    if (same) same.tags.push(label)
    else lists.set(JSON.stringify(shown), { ...shown, tags: [label] })
  }
  return [...lists.values()]
}
