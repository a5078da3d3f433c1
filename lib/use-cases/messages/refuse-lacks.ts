import { RefusedError } from '@/lib/core/errors'
import type { MessageKind } from '@/lib/core/messages/kinds'
import type { Tx } from '@/lib/data/db'
import { jobToWriteOf, type JobToWriteOf } from '@/lib/data/messages'
import { shopOf } from '@/lib/data/shop'
import { jobText, wordingOf } from '@/lib/dossier/messages/job-texts'
import { lackWords } from '@/lib/words/messages'

type About = { readonly jobId: string; readonly kind: MessageKind; readonly findingId: string }

/** The job that is written about; refused while the text would tell of what is not so: ready, with nothing ready. */
export async function refuseLacks(tx: Tx, { jobId, kind, findingId }: About): Promise<JobToWriteOf> {
  const job = await jobToWriteOf(tx, { id: jobId })
  const asked = { shop: await shopOf(tx), wording: wordingOf(kind, null), findingId: findingId || null }
  const [lack] = jobText(kind, job, asked).lacks
  if (lack !== undefined) throw new RefusedError({ code: 'wrong-state', message: lackWords[lack] })
  return job
}
