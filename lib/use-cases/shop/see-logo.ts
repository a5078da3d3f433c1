import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { readFile } from '@/lib/data/files'
import { deadLink, openLink } from '@/lib/data/links'
import { logoOf, shopOf } from '@/lib/data/shop'

type Bytes = Uint8Array<ArrayBuffer>

/** The shop's logo, for whoever may choose another; an address of an earlier one opens nothing. */
export async function seeLogo(actor: Actor, sha256: string): Promise<Bytes> {
  must(allow(actor, 'settings.change'))
  const logo = logoOf(await shopOf(await db()))
  if (logo?.sha256 === sha256) return readFile(sha256)
  throw new RefusedError({ code: 'not-found', message: 'Logo not found.' })
}

/** The same beside the shop's name on a customer's page, for whoever holds a link that opens something. */
export async function seeLogoByLink(token: string, now: Date): Promise<Bytes> {
  const client = await db()
  await openLink(client, token, now)
  const logo = logoOf(await shopOf(client))
  if (logo) return readFile(logo.sha256)
  throw deadLink()
}
