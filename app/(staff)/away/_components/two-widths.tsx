import { Marks } from '@/app/_components/charts/marks-svg'
import type { Drawing } from '@/lib/drawing/marks'
import styles from './pictures.module.css'

const deskMm = 160
/** A telephone's width in millimetres that leaves the words some fifteen pixels high. */
const telephoneMm = 84

/** A picture as wide as its page, drawn for the desk and for the telephone: only one of them is there. */
export function TwoWidths({ draw }: { draw: (widthMm: number) => Drawing }) {
  return (
    <>
      <Marks drawing={draw(deskMm)} className={styles.wide} />
      <Marks drawing={draw(telephoneMm)} className={styles.narrow} />
    </>
  )
}
