import { Marks } from '@/app/_components/charts/marks-svg'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { headPlan } from '@/lib/drawing/head-plan'
import styles from './step.module.css'

/** This head, drawn: which edge is deep, which hole is which, what was read where. */
export function HeadDrawn({ drawing }: { drawing: HeadDrawing | null }) {
  if (!drawing) return null
  return (
    <section aria-label="This head">
      <Marks drawing={headPlan(drawing, 132)} className={styles.drawn} />
    </section>
  )
}
