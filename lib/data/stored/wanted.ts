import { z } from 'zod'
import { wantedKeys, type KeptFigure, type WantedFigures } from '@/lib/core/wanted/figures'
import { storedObject, type Fields, type StoredJson } from './stored-json'

const figure = z.object({ value: z.number(), text: z.string(), unit: z.string() } satisfies Fields<KeptFigure>)

/** By key, as typed; what nobody said is left out. */
export const storedWantedFigures: z.ZodType<WantedFigures> = z.partialRecord(z.enum(wantedKeys), figure)

type Kept = { readonly figures: WantedFigures }

/** A column of wanted figures; '' where nothing was ever said. */
function column(name: string): StoredJson<WantedFigures> {
  const stored = storedObject<Kept>(name, z.object({ figures: storedWantedFigures } satisfies Fields<Kept>))
  return {
    read: (text, id) => (text === '' ? {} : stored.read(text, id).figures),
    write: (figures) => (Object.keys(figures).length === 0 ? '' : stored.write({ figures })),
  }
}

export const wantedOnJob = column('Job.wanted')
export const wantedOnVisit = column('Visit.wanted')
export const wantedOnCasting = column('CastingRecord.wanted')
