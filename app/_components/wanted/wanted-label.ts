import { wantedFigures, type WantedKey } from '@/lib/core/wanted/figures'

/** "wanted.intakeSeatWidthIn" → "seat width, intake"; any other field: as it is. */
export function wantedLabel(path: string): string {
  const key = path.split('.').at(-1) ?? ''
  return key in wantedFigures ? wantedFigures[key as WantedKey].label : path
}
