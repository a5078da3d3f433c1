import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'

/** What a password of this person must not be made of: the names of the shop and of the person. */
export async function ownWords(person: { readonly name: string; readonly signIn: string }): Promise<readonly string[]> {
  const { name } = await shopOf(await db())
  return [name, person.name, person.signIn]
}
