import { db } from '@/lib/data/db'

/** Whether the shop's database opens and answers. Says nothing of what is in it. */
export async function answers(): Promise<boolean> {
  try {
    await (await db()).shop.count()
    return true
  } catch {
    return false
  }
}
