import { errorForLog } from '@/lib/data/error-for-log'
import { log } from '@/lib/data/log'
import { db } from '@/lib/data/db'
import { readFile, storeFile } from '@/lib/data/files'
import { addPaperFile, moneyPaperById, paperFile } from '@/lib/data/money-papers'
import { shopOf } from '@/lib/data/shop'
import { moneyPaper } from '@/lib/pdf/money-paper'
import type { StoredPaper } from './kept-paper'
import { moneyPaperData } from './money-paper-data'
import { printSetting } from './print-spec'
import { withLogo } from './with-logo'

/** An invoice, a credit note or a receipt as it was first made. Whoever calls this has made sure that it may be seen. */
export async function moneyPaperOf(paperId: string): Promise<StoredPaper> {
  const client = await db()
  const { number } = await moneyPaperById(client, paperId)
  const sha256 = (await paperFile(client, paperId)) ?? (await makeBytes(paperId))
  return { name: `${number}.pdf`, bytes: await readFile(sha256) }
}

/**
 * Makes the bytes of a paper once its numbers are kept: nothing but rows is made inside a transaction. What goes wrong here
 * costs nothing: the paper is made from its frozen facts when it is first asked for.
 */
export async function freezePaper(paperId: string): Promise<void> {
  try {
    if ((await paperFile(await db(), paperId)) === null) await makeBytes(paperId)
  } catch (error) {
    log.error({ paperId, err: errorForLog(error) }, 'a money paper was not printed yet')
  }
}

async function makeBytes(paperId: string): Promise<string> {
  const client = await db()
  const { said, at } = await moneyPaperById(client, paperId)
  const setting = printSetting({ ...said, paper: (await shopOf(client)).paper }, at)
  const file = await storeFile(await withLogo(moneyPaper)(moneyPaperData(said), setting))
  await client.$transaction((tx) => addPaperFile(tx, paperId, file, new Date()))
  return (await paperFile(client, paperId)) ?? file.sha256
}
