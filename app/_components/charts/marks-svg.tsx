import { useId } from 'react'
import type { Drawing } from '@/lib/drawing/marks'
import { toSvg } from '@/lib/drawing/to-svg'
import styles from './marks-svg.module.css'

type Props = {
  drawing: Drawing
  /** The same stands beside it in words: left out of what is read aloud. */
  decorative?: boolean
  className?: string
}

/** Any drawing of `lib/drawing` on a page: the same marks that go on paper. */
export function Marks({ drawing, decorative = false, className }: Props) {
  const id = useId()
  const { viewBox, title, description, elements } = toSvg(drawing)
  const words = decorative
    ? ({ 'aria-hidden': true } as const)
    : ({ role: 'img', 'aria-labelledby': `${id}-title`, 'aria-describedby': `${id}-description` } as const)
  return (
    <svg viewBox={viewBox} focusable="false" className={[styles.marks, className].filter(Boolean).join(' ')} {...words}>
      {!decorative && <title id={`${id}-title`}>{title}</title>}
      {!decorative && <desc id={`${id}-description`}>{description}</desc>}
      {elements.map(({ tag: Element, attrs, text }, at) => (
        <Element key={at} {...attrs}>
          {text}
        </Element>
      ))}
    </svg>
  )
}
