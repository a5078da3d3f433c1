import { RefusedError } from '@/lib/core/errors'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import type { Reader } from '@/lib/data/db'
import { readFile } from '@/lib/data/files'
import { namesOf } from '@/lib/data/people'
import { releaseOf, specOfRelease } from '@/lib/data/releases'
import { shopOf } from '@/lib/data/shop'
import { returnedNotDone } from '@/lib/data/stored/records'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
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
  const head = await loadDossier(reader, visitId)
  const { returned } = head.visit
  if (revision !== undefined || !returned) throw notYet()
  const shop = await shopOf(reader)
  const spec = await returnedSpec(reader, head, returned)
  const name = `returned-${spec.tag}.pdf`
  const setting = printSetting(shop, returned.at)
  return { name, bytes: await keptPaper({ kind: 'returned', name, data: spec, setting }, printSpec).bytes() }
}

const notYet = (): RefusedError =>
  new RefusedError({
    code: 'not-found',
    message: 'No spec sheet yet: this head is not released.',
  })

/** The newest sheet of a visit for the page: frozen, or of a head that went back; null: neither yet. */
export async function newestSpec(reader: Reader, head: Dossier): Promise<SpecSheetData | null> {
  const { releases, returned } = head.visit
  const [release] = releases
  if (release) return specOfRelease(release)
  return returned ? returnedSpec(reader, head, returned) : null
}

async function returnedSpec(
  reader: Reader,
  head: Dossier,
  returned: NonNullable<Dossier['visit']['returned']>,
): Promise<SpecSheetData> {
  const shop = await shopOf(reader)
  const names = await namesOf([returned.byId, ...head.visit.waivers.map((waiver) => waiver.byId)])
  const end = {
    revision: 1,
    revisionReason: '',
    outcome: 'returned as is' as const,
    releasedBy: names.get(returned.byId) ?? '',
    notDone: notDoneInShort(returnedNotDone.read(returned.notDone, returned.visitId)),
    notes: [`Returned as is: ${returned.reason}`],
    at: returned.at,
  }
  return specSheetOf(head, shop, end, (id) => names.get(id) ?? '')
}
