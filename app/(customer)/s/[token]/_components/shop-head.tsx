import { logoOnScreen } from '@/lib/core/shop/logo-box'
import type { ShopBlock } from '@/lib/core/spec/spec-sheet'
import styles from './shop-head.module.css'

/** Whose page it is: the logo as on the papers, and beside it name, address and telephone. */
export function ShopHead({ shop, token }: { shop: ShopBlock; token: string }) {
  const { name, lines, logo } = shop
  return (
    <div className={styles.head}>
      {logo && (
        // The name stands beside it.
        <img src={`/s/${token}/logo`} alt="" {...logoOnScreen(logo.widthPx, logo.heightPx)} className={styles.logo} />
      )}
      <div>
        <p className="figure">{name}</p>
        <p className="soft">{lines.join(' · ')}</p>
      </div>
    </div>
  )
}
