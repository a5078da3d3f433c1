import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { ShopLogo } from '@/lib/core/spec/spec-sheet'
import type { Reader } from './db'
import { addFileRow, type StoredFile } from './files'
import type { Picture } from './pictures'
import { conflictUnless, type Write } from './write'

export async function shopOf(reader: Reader) {
  const shop = await reader.shop.findUnique({ where: { id: 1 } })
  if (!shop) throw new RefusedError({ code: 'wrong-state', message: 'This shop has not been set up yet.' })
  return shop
}

/** 1 once the shop is set up, else 0. */
export const countShops = (reader: Reader): Promise<number> => reader.shop.count()

export type LogoColumns = {
  readonly logoSha256: string | null
  readonly logoWidthPx: number | null
  readonly logoHeightPx: number | null
}

/** The three columns of a logo as one thing; null: the shop has none. */
export function logoOf({ logoSha256, logoWidthPx, logoHeightPx }: LogoColumns): ShopLogo | null {
  if (logoSha256 === null || logoWidthPx === null || logoHeightPx === null) return null
  return { sha256: logoSha256, widthPx: logoWidthPx, heightPx: logoHeightPx }
}

export type NewLogo = { readonly file: StoredFile } & Pick<Picture, 'widthPx' | 'heightPx'>

/**
 * Another logo, or none, in the place of the one that was seen. It is compared by what it is and not by the version of the
 * shop's words: name and address may be half typed on the same page.
 */
export async function changeLogoRow(ctx: Write, seen: string | null, logo: NewLogo | null): Promise<void> {
  if (logo) await addFileRow(ctx.tx, logo.file, 'image/png', ctx.now)
  const changed = await ctx.tx.shop.updateMany({
    where: { id: 1, logoSha256: seen },
    data: {
      logoSha256: logo?.file.sha256 ?? null,
      logoWidthPx: logo?.widthPx ?? null,
      logoHeightPx: logo?.heightPx ?? null,
    },
  })
  conflictUnless(changed, 'the logo')
}
