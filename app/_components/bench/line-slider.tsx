'use client'
import { useId } from 'react'
import type { TargetLine } from '@/lib/core/cut/target-line'
import { formatThou } from '@/lib/core/units/format-figure'
import styles from './line-slider.module.css'

type Props = {
  line: TargetLine
  /** Angle part it stands at, in inches. */
  angleIn: number
  onAngle: (angleIn: number) => void
  deepEdge: 'intake' | 'exhaust'
}

const stepIn = 0.0005
const width = 1000

/** The steepest the slider goes: all angle, or where the line runs into what no mill does. */
export const lineEndIn = (line: TargetLine): number => Math.min(line.allAngleIn, 0.25)

/**
 * From all flat to all angle along the cuts that reach the target, half a thou a step. The stretch that the limits leave is
 * solid; beyond it the line is broken, and what ends it is named.
 */
export function LineSlider({ line, angleIn, onAngle, deepEdge }: Props) {
  const id = useId()
  const endIn = lineEndIn(line)
  const steps = Math.max(1, Math.ceil(endIn / stepIn - 1e-6))
  const at = Math.round(angleIn / stepIn)
  const flatIn = Math.max(0, line.allFlatIn - (angleIn / line.allAngleIn) * line.allFlatIn)
  const said = `${formatThou(flatIn)} flat and ${formatThou(angleIn)} at the ${deepEdge} edge`
  const x = (inches: number) => Math.min(width, (inches / (steps * stepIn)) * width)
  return (
    <div className={styles.slider}>
      <label htmlFor={id} className={styles.label}>
        Between flat and tilt
      </label>
      <div className={styles.line}>
        <svg viewBox={`0 0 ${width} 24`} preserveAspectRatio="none" className={styles.track} aria-hidden="true">
          <path d={`M0 12H${width}`} className={styles.beyond} />
          <path d={`M${x(line.from.angleIn)} 12H${x(line.to.angleIn)}`} className={styles.stretch} />
          <path d={`M${x(line.from.angleIn)} 0V24M${x(line.to.angleIn)} 0V24`} className={styles.end} />
        </svg>
        <input
          id={id}
          type="range"
          min={0}
          max={steps}
          step={1}
          value={at}
          aria-valuetext={said}
          aria-describedby={`${id}-ends`}
          className={styles.range}
          onChange={(event) => onAngle(Math.min(endIn, Number(event.target.value) * stepIn))}
        />
      </div>
      <div className={styles.ends}>
        <span>all flat</span>
        <span>{endIn < line.allAngleIn ? 'steeper' : 'all angle'}</span>
      </div>
      <p id={`${id}-ends`} className={styles.note}>
        Possible from {formatThou(line.from.angleIn)} ({line.from.boundBy}) to {formatThou(line.to.angleIn)} of angle
        part ({line.to.boundBy}).
      </p>
    </div>
  )
}
