import { db } from '@/lib/data/db'
import { countShops } from '@/lib/data/shop'

/** Whether the shop's database opens and answers. Says nothing of what is in it. */
export async function answers(): Promise<boolean> {
  try {
    await countShops(await db())
    return true
  } catch {
    return false
  }
}
