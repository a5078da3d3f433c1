import { castingFigures, type CastingFigureKey } from '../casting/figures'
import { engineFigures, type EngineFigureKey } from '../engine/figures'
import { refuse, type Result } from '../errors'

/** Any figure of a casting's or an engine's record; or the engine's layout, which is no figure. */
export type FigureKey = CastingFigureKey | EngineFigureKey | HeadFigureKey | 'layout'

/** What is known of one head, not of its casting. */
type HeadFigureKey = keyof typeof headFigures
const headFigures = {
  seatReading: { label: 'seat depth read on this head' },
  removedBeforeIn: { label: 'metal removed before this job' },
  ccNow: { label: 'a chamber read after the last cut or work on it' },
} as const

const records: Readonly<Record<string, { readonly label: string }>> = {
  ...castingFigures,
  ...engineFigures,
  ...headFigures,
  layout: { label: 'the engine’s layout, inline or V' },
}

/** What a figure is called on every screen. Example: `boreIn` → "bore". */
export const figureName = (key: string): string => records[key]?.label ?? key

/** Whether a name is a figure of a casting's or an engine's record: a screen can lead to its field. */
export const isFigureKey = (key: string): key is FigureKey => key in records && !(key in headFigures)

/**
 * The same answer, with a refusal for missing figures put in the records' own names, so that a screen can lead to the
 * field that gives them.
 *
 * @param names what the calculation calls a figure → the record's key
 */
export function inRecordsNames<T>(result: Result<T>, names: Readonly<Record<string, FigureKey>>): Result<T> {
  if (result.ok || result.refusal.code !== 'missing') return result
  const needs = [...new Set((result.refusal.needs ?? []).map((need) => names[need] ?? need))]
  return refuse('missing', `Needs ${needs.map(figureName).join(', ')}.`, { needs })
}
