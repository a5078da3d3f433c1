import { logoOnScreen } from '@/lib/core/shop/logo-box'
import styles from './logo.module.css'

export type LogoPicture = { readonly src: string; readonly widthPx: number; readonly heightPx: number }
export type ShopWords = { readonly name: string; readonly lines: readonly string[] }

type Props = { logo: LogoPicture; shop: ShopWords; caption: string; grey?: boolean }

/** The head of a paper as it prints: the logo in its size, on white, name and address beside it. */
export function LogoSample({ logo, shop, caption, grey = false }: Props) {
  return (
    <figure className={styles.sample}>
      <div className={grey ? `${styles.paper} ${styles.grey}` : styles.paper}>
        {/* The name stands beside it. */}
        <img src={logo.src} alt="" {...logoOnScreen(logo.widthPx, logo.heightPx)} />
        <div>
          <p className={styles.name}>{shop.name}</p>
          {shop.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </div>
      <figcaption className="soft">{caption}</figcaption>
    </figure>
  )
}
