const none = /^(none|no|0|–|-)\.?$/i
const every = /\b(all|every|each)\b/i

/** Whether what the bench wrote says that no hole was slotted. */
export const saysNone = (note: string): boolean => none.test(note.trim())

/**
 * The holes that a note names, by the names on the casting's record: "6 7 8 9 10, outward", "6-10", "all". What is not
 * one of the names is passed over: the note itself stands beside the drawing as it was written.
 */
export function holesNamed(note: string, labels: readonly string[]): ReadonlySet<string> {
  if (saysNone(note)) return new Set()
  const known = new Map(labels.map((label) => [label.trim().toLowerCase(), label]))
  const named = new Set<string>()
  for (const [, from = '', to = ''] of note.matchAll(/(\d+)\s*(?:-|–|to)\s*(\d+)/gi)) {
    for (let hole = Number(from); hole <= Math.min(Number(to), Number(from) + labels.length); hole++) {
      const label = known.get(String(hole))
      if (label !== undefined) named.add(label)
    }
  }
  for (const word of note.toLowerCase().split(/[^\p{L}\p{N}]+/u)) {
    const label = known.get(word)
    if (label !== undefined) named.add(label)
  }
  return named.size === 0 && every.test(note) ? new Set(labels) : named
}
