import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { logoPixels } from '@/lib/core/shop/logo-box'
import { storeFile } from '@/lib/data/files'
import { readLogo } from '@/lib/data/logo-picture'
import { changeLogoRow } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import { mostLogoBytes, type ChooseLogo } from '@/lib/schemas/logo'

/**
 * The picture at the head of the papers. It is read and stored before the transaction; a file that no row points at does
 * no harm. Papers that were released keep the logo of their day.
 */
export async function chooseLogo(
  actor: Actor,
  { seen, bytes }: Omit<ChooseLogo, 'sha256'> & { readonly bytes: Uint8Array },
  moment: Moment,
): Promise<{ sha256: string }> {
  must(allow(actor, 'settings.change'))
  refuseLarge(bytes)
  const { bytes: kept, widthPx, heightPx } = await readLogo(bytes, logoPixels)
  const file = await storeFile(kept)
  return write(actor, moment, async (ctx) => {
    await changeLogoRow(ctx, seen, { file, widthPx, heightPx })
    const changes = { logo: { from: seen, to: file.sha256 } }
    ctx.audit({ action: 'shop-logo.set', subjectId: '1', changes })
    return { sha256: file.sha256 }
  })
}

function refuseLarge({ byteLength }: Uint8Array): void {
  if (byteLength <= mostLogoBytes) return
  throw new RefusedError({
    code: 'out-of-range',
    message: `This file is larger than ${mostLogoBytes / 1024 / 1024} MB. Save the picture smaller and choose it again.`,
  })
}
