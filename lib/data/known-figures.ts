import 'server-only'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { EngineFacts } from '@/lib/core/engine/figures'

type Row = { readonly key: string; readonly value: number }

/** A casting's figures for one chamber form; those of the very form before those of any. */
export function castingFactsOf(
  casting: { readonly figures: readonly (Row & { readonly form: string })[] } | null,
  form: string,
): CastingFacts {
  const rows = casting?.figures ?? []
  const pick = (wanted: string) => rows.filter((row) => row.form === wanted).map((row) => [row.key, row.value] as const)
  return Object.fromEntries([...pick('any'), ...pick(form)]) as CastingFacts
}

export function engineFactsOf(
  engine: { readonly layout: string; readonly camInHead: boolean | null; readonly figures: readonly Row[] } | null,
): EngineFacts {
  const figures = Object.fromEntries((engine?.figures ?? []).map((row) => [row.key, row.value]))
  return {
    ...figures,
    layout: engine?.layout === 'v' || engine?.layout === 'inline' ? engine.layout : 'unknown',
    camInHead: engine?.camInHead ?? null,
  }
}
