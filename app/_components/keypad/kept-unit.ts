const unitPlace = (name: string): string => `unit ${name}`

/** The unit that was chosen last under the first of these names that has one, apart by bars; null: none was. */
export function keptUnit(names: string): string | null {
  try {
    const kept = names.split('|').map((name) => localStorage.getItem(unitPlace(name)))
    return kept.find((unit) => unit !== null) ?? null
  } catch {
    return null
  }
}

/** Keeps a unit under each of these names, apart by bars. */
export function keepUnit(names: string, unit: string): void {
  try {
    for (const name of names.split('|')) localStorage.setItem(unitPlace(name), unit)
  } catch {
    // A device that keeps nothing opens in the usual unit again.
  }
}
