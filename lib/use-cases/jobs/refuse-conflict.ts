import { RefusedError } from '@/lib/core/errors'
import type { LastChange } from '@/lib/data/audit-trail'

export type Differing = Readonly<Record<string, { readonly from: unknown; readonly to: unknown }>>

const said = (value: unknown): string => {
  if (value === null || value === '') return 'nothing'
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return `“${String(value)}”`
}

/** Somebody was first: says who, and shows both sides, field by field. Nothing is decided for the person. */
export function refuseConflict(
  what: string,
  last: LastChange | null,
  differing: Differing,
  labels: Readonly<Record<string, string>>,
  /** Where the fields stand in the form: "visits.1." */
  under = '',
): never {
  const sides = Object.entries(differing).map(([field, { from, to }]) => ({
    field,
    words: `${labels[field] ?? field} says ${said(from)} now, yours says ${said(to)}`,
  }))
  const who = last?.by ? last.by : 'Somebody else'
  throw new RefusedError({
    code: 'conflict',
    message: `${who} changed ${what} first: ${sides.map((side) => side.words).join('; ')}. Look at both, then decide.`,
    fields: Object.fromEntries(sides.map((side) => [under + side.field, `${side.words}.`])),
  })
}
