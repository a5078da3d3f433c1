import { Tag } from '@/app/_components/tag/tag'
import { When } from '@/app/_components/ui/when'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { OutOfTolerance } from '@/lib/use-cases/back-room/see-back-room'

type Props = { readings: readonly OutOfTolerance[]; zone: string; locale: string }

export function Missed({ readings, zone, locale }: Props) {
  return (
    <section className="part" aria-labelledby="missed">
      <h2 id="missed">Finished out of tolerance this month</h2>
      {readings.length === 0 ? (
        <p className="soft">No finished chamber measured this month is out of tolerance.</p>
      ) : (
        <ul className="plain-list">
          {readings.map(({ id, tag, chamber, text, unit, targetText, targetUnit, at }) => (
            <li key={id} className="row">
              <Tag number={tag} size="s" href={`/t/${encodeURIComponent(tag)}`} />
              <span>
                Chamber {chamber}: {typedFigure({ text, unit })}, target{' '}
                {typedFigure({ text: targetText, unit: targetUnit })}{' '}
                <span className="soft">
                  <When at={at} zone={zone} locale={locale} style="day" />
                </span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
