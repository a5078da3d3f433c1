import { engineFigureKeys } from '@/lib/core/engine/figures'
import type { BookJobForm, HeadForm } from '@/lib/schemas/job'

/** What a folded part of the booking holds, in a few words; '' for nothing. */

const list = (...parts: readonly (string | false)[]): string => parts.filter(Boolean).join(', ')
const count = (many: number, one: string): string => (many === 0 ? '' : many === 1 ? `1 ${one}` : `${many} ${one}s`)

export const heldAddress = ({ customer }: BookJobForm): string => list(customer.email, customer.address)

export const heldEngine = ({ engine }: BookJobForm): string =>
  list(
    engine.label,
    engine.layout === 'v' ? 'V' : engine.layout === 'inline' && 'inline',
    engine.camInHead !== 'unknown' && 'cam known',
    count(engineFigureKeys.filter((key) => engine.figures[key].trim() !== '').length, 'figure'),
  )

export const heldClass = (job: BookJobForm): string =>
  list(
    job.classFlatOnly && 'flat cuts only',
    job.classMinCc !== '' && `minimum ${job.classMinCc}`,
    job.classMaxCut !== '' && `deepest ${job.classMaxCut}`,
    job.finishAsked !== '' && `finish ${job.finishAsked}`,
  )

export const heldWanted = ({ wanted }: BookJobForm): string =>
  count(Object.values(wanted ?? {}).filter((text) => text.trim() !== '').length, 'figure')

const mostOfNote = 60
export const heldNote = ({ note, partsPlace }: BookJobForm): string =>
  list(note.length > mostOfNote ? `${note.slice(0, mostOfNote)}…` : note, partsPlace)

const sources = { customer: '', bought: 'supplied by the shop', 'bought-cut': 'supplied by the shop, already cut' }

export const heldHead = (head: HeadForm | undefined): string =>
  head === undefined
    ? ''
    : list(
        head.stamp !== '' && `stamp ${head.stamp}`,
        head.marks,
        head.material,
        head.chamberForm !== 'as-cast' && head.chamberForm,
        sources[head.source],
        !head.used && 'new',
        head.cameAssembled && 'assembled',
        head.overheated && 'overheated',
        head.presentCc !== '' && `now ${head.presentCc}`,
        head.targetCc !== '' && `target ${head.targetCc}`,
        head.cameWith !== '' && `with ${head.cameWith}`,
        head.rackPlace !== '' && `rack ${head.rackPlace}`,
        head.comeback && 'comeback',
      )
