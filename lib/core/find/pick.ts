/** What a picker asks for: lines by their ids, or by words that their names hold; no words: the first by name. */
export type PickAsked = { readonly ids: readonly string[] } | { readonly words: readonly string[] }

export const firstPicks: PickAsked = { words: [] }

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

/** What stands in a picker's field, or the ids that a form names already, a comma between them. */
export function pickAsked(typed: string): PickAsked {
  const ids = typed.trim().split(',')
  if (ids.every((id) => uuid.test(id))) return { ids }
  return { words: typed.toLowerCase().split(/\s+/).filter(Boolean) }
}

/** Whether a name holds all these words, small and capital letters alike. */
export const namesAll = (name: string, words: readonly string[]): boolean => {
  const lower = name.toLowerCase()
  return words.every((word) => lower.includes(word))
}
