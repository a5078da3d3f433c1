import { Tag } from '@/app/_components/tag/tag'
import { When } from '@/app/_components/ui/when'

type Waiver = {
  readonly id: string
  readonly tag: string
  readonly what: string
  readonly reason: string
  readonly at: Date
  readonly by: string
}
type Props = { waivers: readonly Waiver[]; zone: string; locale: string }

export function Waivers({ waivers, zone, locale }: Props) {
  return (
    <section className="part" aria-labelledby="waivers">
      <h2 id="waivers">Waived this month</h2>
      {waivers.length === 0 ? (
        <p className="soft">No waivers this month.</p>
      ) : (
        <ul className="plain-list">
          {waivers.map((waiver) => (
            <li key={waiver.id} className="row">
              <Tag number={waiver.tag} size="s" href={`/t/${encodeURIComponent(waiver.tag)}`} />
              <span>
                {waiver.what}: {waiver.reason}{' '}
                <span className="soft">
                  {waiver.by}, <When at={waiver.at} zone={zone} locale={locale} style="day" />
                </span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
