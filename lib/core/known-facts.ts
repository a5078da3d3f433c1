import { ok, refuse, type Result } from './errors'

/** What it is called on screen, the figure if it is known, and the least and most that is physically possible. */
export type Fact = readonly [label: string, value: number | null | undefined, least: number, most: number]

/**
 * The figures of a calculation, all of them known and possible, or the refusal that names every one that is not. Each
 * calculation over facts that a shop may not have begins here, so that "needs …" is said in one way.
 */
export function knownFacts<K extends string>(facts: Readonly<Record<K, Fact>>): Result<Record<K, number>> {
  const values = {} as Record<K, number>
  let allGood = true
  // The way nearly every call goes, at every move of a slider: nothing is built but the answer.
  for (const name in facts) {
    const [, value, least, most] = facts[name]
    const figure = value ?? NaN
    if (!(figure >= least && figure <= most)) allGood = false
    values[name] = figure
  }
  return allGood ? ok(values) : whatIsWrong(facts)
}

/**
 * The same for a calculation that can do without: those that are known must be possible, the others are let through. An
 * impossible figure is refused whether or not the answer hangs on it.
 */
export function givenFacts<K extends string>(facts: Readonly<Record<K, Fact>>): Result<Partial<Record<K, number>>> {
  const given = Object.entries<Fact>(facts).filter(([, [, value]]) => value !== null && value !== undefined)
  return knownFacts(Object.fromEntries(given) as Record<K, Fact>)
}

function whatIsWrong(facts: Readonly<Record<string, Fact>>) {
  const entries = Object.entries(facts)
  const missing = entries.filter(([, [, value]]) => value === null || value === undefined)
  if (missing.length > 0) {
    const labels = missing.map(([, [label]]) => label)
    return refuse('missing', `Needs ${labels.join(', ')}.`, { needs: missing.map(([name]) => name) })
  }
  const wrong = entries.filter(([, [, value, least, most]]) => !(Number(value) >= least && Number(value) <= most))
  const fields = Object.fromEntries(
    wrong.map(([name, [, value, least, most]]) => [name, `${value} is not between ${least} and ${most}`]),
  )
  const said = wrong.map(([name, [label]]) => `${label}: ${fields[name]}`)
  return refuse('out-of-range', `${said.join('; ')}.`, { fields })
}
