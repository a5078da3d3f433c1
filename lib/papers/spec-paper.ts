import { RefusedError } from '@/lib/core/errors'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import type { Reader } from '@/lib/data/db'
import { readFile } from '@/lib/data/files'
import { paperVisit, type PaperVisit } from '@/lib/data/papers'
import { namesOf } from '@/lib/data/people'
import { releaseOf, specOfRelease } from '@/lib/data/releases'
import { shopOf } from '@/lib/data/shop'
import { paperHeads, type PaperHead } from '@/lib/dossier/paper-head'
import { printSetting, printSpec } from './print-spec'
import { keptPaper, type StoredPaper } from './kept-paper'
import { notDoneInShort } from '@/lib/dossier/not-done'
import { specSheetOf } from '@/lib/dossier/spec/spec-sheet-of'

/** Whoever calls this has made sure that the asker may see this very visit. */
export async function specPaper(reader: Reader, visitId: string, revision?: number): Promise<StoredPaper> {
  const release = await releaseOf(reader, visitId, revision)
  if (release) {
    const { tag, revision: number } = specOfRelease(release)
    const suffix = number > 1 ? `-revision-${number}` : ''
    return { bytes: await readFile(release.pdfSha256), name: `spec-sheet-${tag}${suffix}.pdf` }
  }
  const visit = await paperVisit(reader, visitId)
  if (revision !== undefined || !visit.returned) throw notYet()
  const shop = await shopOf(reader)
  const spec = await returnedSpec(reader, visit, visit.returned)
  const name = `returned-${spec.tag}.pdf`
  const setting = printSetting(shop, visit.returned.at)
  return { name, bytes: await keptPaper({ kind: 'returned', name, data: spec, setting }, printSpec).bytes() }
}

const notYet = (): RefusedError =>
  new RefusedError({
    code: 'not-found',
    message: 'There is no such spec sheet: this head has not been released.',
  })

/** The newest sheet of a visit for the page: frozen, or of a head that went back; null: neither yet. */
export async function newestSpec(reader: Reader, visit: PaperVisit): Promise<SpecSheetData | null> {
  const release = await releaseOf(reader, visit.id)
  if (release) return specOfRelease(release)
  return visit.returned ? returnedSpec(reader, visit, visit.returned) : null
}

async function returnedSpec(
  reader: Reader,
  visit: PaperVisit,
  returned: NonNullable<PaperVisit['returned']>,
): Promise<SpecSheetData> {
  const [head] = (await paperHeads(reader, [visit])) as [PaperHead]
  const shop = await shopOf(reader)
  const names = await namesOf([returned.byId, ...visit.waivers.map((waiver) => waiver.byId)])
  const end = {
    revision: 1,
    revisionReason: '',
    outcome: 'returned as is' as const,
    releasedBy: names.get(returned.byId) ?? '',
    notDone: notDoneInShort(JSON.parse(returned.notDone) as string[]),
    notes: [`Returned as is: ${returned.reason}`],
    at: returned.at,
  }
  return specSheetOf(head, shop, end, (id) => names.get(id) ?? '')
}
