import type { ShopBlock } from '@/lib/core/spec/spec-sheet'
import { readFile } from '@/lib/data/files'
import type { PrintSetting } from '@/lib/pdf/print-setting'

type Render<Data> = (data: Data, setting: PrintSetting) => Promise<Uint8Array>

/** The same paper with the logo that its data names: read when the paper is made, not each time that it is asked for. */
export const withLogo =
  <Data extends { readonly shop: ShopBlock }>(render: Render<Data>): Render<Data> =>
  async (data, setting) => {
    const { logo } = data.shop
    return render(data, logo ? { ...setting, logo: await readFile(logo.sha256) } : setting)
  }
