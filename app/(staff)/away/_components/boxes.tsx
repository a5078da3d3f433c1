import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import type { Box } from '@/lib/use-cases/outside/full-boxes'

const sendHref = (visitIds: readonly string[]): string => `/away/send?${visitIds.map((id) => `head=${id}`).join('&')}`

/** Heads that can go out now, by whom and what for; where a vendor's box is waited for, how full it is. */
export function Boxes({ boxes }: { boxes: readonly Box[] }) {
  return (
    <section className="stack part" aria-label="Ready to send">
      <h2>Ready to send</h2>
      {boxes.length === 0 && <p className="soft">No heads ready to send.</p>}
      {boxes.map((box) => (
        <div key={box.id} className="stack" role="group" aria-label={box.step}>
          <div className="row spread">
            <h3>
              {box.step}: {fullness(box)}
            </h3>
            {box.heads.length > 1 && (
              <ButtonLink href={sendHref(box.heads.map((head) => head.visitId))} variant={box.full ? 'main' : 'plain'}>
                Send these {box.heads.length} together
              </ButtonLink>
            )}
          </div>
          <ul className="plain-list">
            {box.heads.map((head) => (
              <li key={head.visitId} className="row spread">
                <span className="row">
                  <Tag number={head.tag} href={`/heads/${head.headId}`} />
                  <span>
                    job <Link href={`/jobs/${head.jobNumber}`}>{head.jobNumber}</Link>
                  </span>
                </span>
                <ButtonLink href={sendHref([head.visitId])}>Send {head.tag}</ButtonLink>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  )
}

function fullness({ heads, boxHeads, vendor, full }: Box): string {
  if (vendor === null) return 'no vendor chosen'
  if (boxHeads === null) return `to ${vendor}, each when ready`
  const count = `${heads.length} of ${boxHeads} for a full box at ${vendor}`
  return full ? `${count}: ready to send` : count
}
