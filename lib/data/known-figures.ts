import 'server-only'
import type { CastingFacts } from '@/lib/core/casting/figures'
import { tracedOpening, type TracedOpening } from '@/lib/core/cut/outline-text'
import type { Result } from '@/lib/core/errors'
import type { EngineFacts } from '@/lib/core/engine/figures'

type Row = { readonly key: string; readonly value: number }

type CastingRows = {
  readonly figures: readonly (Row & { readonly form: string })[]
  readonly outlines: readonly { readonly form: string; readonly points: string }[]
}

/**
 * A casting's figures for one chamber form; those of the very form before those of any. An opening that was traced gives
 * its area and centre, unless they were typed beside it: entry has seen that the two agree.
 */
export function castingFactsOf(casting: CastingRows | null, form: string): CastingFacts {
  if (!casting) return {}
  const pick = (wanted: string): CastingFacts =>
    Object.fromEntries(casting.figures.flatMap(({ key, value, ...row }) => (row.form === wanted ? [[key, value]] : [])))
  const any = pick('any')
  return { ...any, ...tracedFacts(casting, form, any.milledWidthIn), ...pick(form) }
}

const alreadyRead = new Map<string, Result<TracedOpening>>()
const mostKept = 100

/** The same outline is asked for with every head of its casting, and reading some hundred lines takes milliseconds. */
function readOnce(points: string, milledWidthIn: number | undefined): Result<TracedOpening> {
  const key = `${milledWidthIn} ${points}`
  const known = alreadyRead.get(key)
  if (known) return known
  if (alreadyRead.size >= mostKept) alreadyRead.clear()
  const read = tracedOpening(points, milledWidthIn)
  alreadyRead.set(key, read)
  return read
}

function tracedFacts({ outlines }: CastingRows, form: string, milledWidthIn: number | undefined): CastingFacts {
  const outline = outlines.find((row) => row.form === form)
  const traced = outline && readOnce(outline.points, milledWidthIn)
  if (!traced?.ok) return {}
  const { areaIn2, centreIn } = traced.value
  return { openingAreaIn2: areaIn2, openingCentreIn: centreIn }
}

export function engineFactsOf(
  engine: {
    readonly layout: string
    readonly camInHead: boolean | null
    readonly valvesInBlock: boolean
    readonly figures: readonly Row[]
  } | null,
): EngineFacts {
  const figures = Object.fromEntries((engine?.figures ?? []).map((row) => [row.key, row.value]))
  return {
    ...figures,
    layout: engine?.layout === 'v' || engine?.layout === 'inline' ? engine.layout : 'unknown',
    camInHead: engine?.camInHead ?? null,
    valvesInBlock: engine?.valvesInBlock ?? false,
  }
}
