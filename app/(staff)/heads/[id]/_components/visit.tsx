import { Link } from '@/app/_components/ui/link'
import { CutRuling } from '@/app/_components/head/cut-ruling'
import { MatesHeld } from '@/app/_components/head/mates-held'
import { HeadScale } from '@/app/_components/scale/head-scale'
import { FindingList } from '@/app/(staff)/counter/findings/_components/finding-list'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Notice } from '@/app/_components/ui/notice'
import { WantedShown } from '@/app/_components/wanted/wanted-shown'
import { When } from '@/app/_components/ui/when'
import type { HeadView, VisitView } from '@/lib/use-cases/heads/see-head'
import type { Shown } from '@/lib/use-cases/photos/see-photos'
import type { ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { ruleOnCutAction } from '../actions'
import { Gaps } from './gaps'
import { Holds } from './holds'
import { PlanSummary } from './plan-summary'
import { Readings } from './readings'
import { Route } from './route'
import { ValveSheetTable } from './valve-sheet-table'
import { WaysOut } from './ways-out'

type Props = { visit: VisitView; head: HeadView; manner: ShopLocale; newest: boolean; shown: Shown }

/** One visit: where it stands, what is missing, the plan, the route, every reading. */
export function Visit({ visit, head, manner, newest, shown }: Props) {
  const when = (at: Date) => <When at={at} zone={manner.timeZone} locale={manner.locale} style="date" />
  return (
    <section className="stack part" id={`job-${visit.jobNumber}`} aria-label={`Job ${visit.jobNumber}`}>
      <div className="row spread">
        <h2>
          {newest ? 'This visit' : 'Earlier visit'}: job{' '}
          <Link href={`/jobs/${visit.jobNumber}`}>{visit.jobNumber}</Link>
        </h2>
        <span className="figure">{visit.whereabouts}</span>
      </div>
      <p className="soft">
        {head.may.seeCustomer ? <Link href={`/customers/${visit.customerId}`}>{visit.customer}</Link> : visit.customer},
        booked {when(visit.bookedAt)}
        {visit.ordered.length > 0 && `. Ordered: ${visit.ordered.join(', ')}`}
        {visit.target !== '' && `. Target ${visit.target}`}
        {visit.side !== '' && `. Goes on: ${visit.side}`}
        {visit.cameWith !== '' && `. Came with: ${visit.cameWith}`}
        {visit.rackPlace !== '' && `. Rack location: ${visit.rackPlace}`}.
      </p>
      {visit.comebackOf && (
        <p>
          <strong>Comeback</strong> of{' '}
          <a href={`#job-${visit.comebackOf.jobNumber}`}>job {visit.comebackOf.jobNumber}</a>
          {causeAndPayer(visit.comebackOf)}
        </p>
      )}
      {visit.cameBackAs.map((later) => (
        <p key={later.jobNumber}>
          <strong>Came back</strong> as <a href={`#job-${later.jobNumber}`}>job {later.jobNumber}</a>
          {causeAndPayer(later)}
        </p>
      ))}
      <HeadScale graduations={visit.marks} />
      {visit.returned !== null && (
        <Notice live={false} title="Returned as is">
          <p>{visit.returned}</p>
        </Notice>
      )}
      {visit.handedOver && (
        <p>
          Handed over to {visit.handedOver.to}, {when(visit.handedOver.at)}.
        </p>
      )}
      {newest && visit.handedOver && head.may.book && (
        <div className="row">
          <ButtonLink href={`/counter/book?comeback=${visit.visitId}`}>Book a comeback</ButtonLink>
        </div>
      )}
      {newest && <MatesHeld mates={visit.matesHeld} />}
      {visit.cut && (
        <Notice
          kind={visit.cut.isOpen ? 'caution' : 'info'}
          title={visit.cut.isOpen ? 'Is this cut right?' : 'The cut and the rate'}
          live={false}
        >
          <p>{visit.cut.words}</p>
          {head.may.ruleOnCut && (
            <CutRuling visitId={visit.visitId} ruling={visit.cut.ruling} action={ruleOnCutAction} />
          )}
        </Notice>
      )}
      <Holds holds={visit.holds} mayDecide={head.may.decideHold} shown={shown} />
      <div className="row">
        <ButtonLink href={`/jobs/${visit.jobNumber}/plan/${visit.pairId}`}>Cut plan</ButtonLink>
        {newest && head.may.send && visit.releases.length === 0 && (
          <ButtonLink href={`/away/send?head=${visit.visitId}`}>Send to a vendor</ButtonLink>
        )}
        {visit.outside.map((order) => (
          <ButtonLink key={order.orderId} href={`/away/${order.orderId}`} variant="quiet">
            {order.number}, {order.vendor}, {order.back ? 'back' : 'out'}
          </ButtonLink>
        ))}
        {visit.releases[0] && (
          <ButtonLink href={`/api/papers/spec-sheet/${visit.visitId}`}>Spec sheet (PDF)</ButtonLink>
        )}
      </div>
      <details>
        <summary>Wanted figures</summary>
        <WantedShown {...visit.wanted} />
      </details>
      <PlanSummary plan={visit.plan} removedBefore={visit.removedBefore} />
      {visit.secondChecks.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {newest && (
        <>
          <Gaps visit={visit} mayWaive={head.may.waive} />
          <WaysOut visit={visit} may={head.may} />
        </>
      )}
      {visit.findings.length > 0 && (
        <section className="stack" aria-label="Findings">
          <h3>Findings</h3>
          <FindingList
            findings={visit.findings}
            timeZone={manner.timeZone}
            locale={manner.locale}
            mayAsk={head.may.askFinding}
          />
        </section>
      )}
      {newest ? (
        <Route visit={visit} />
      ) : (
        <details>
          <summary>The route it took</summary>
          <Route visit={visit} />
        </details>
      )}
      {visit.valveSheet && <ValveSheetTable sheet={visit.valveSheet} jobNumber={visit.jobNumber} />}
      <Readings visit={visit} mayCorrect={head.may.correct} manner={manner} />
      {visit.waivers.length > 0 && (
        <section className="stack" aria-label="Waived">
          <h3>Waived</h3>
          <ul className="plain-list">
            {visit.waivers.map((waiver) => (
              <li key={waiver.what + waiver.at.toISOString()}>
                {waiver.what}: {waiver.reason} ({waiver.by}, {when(waiver.at)})
              </li>
            ))}
          </ul>
        </section>
      )}
    </section>
  )
}

const causeAndPayer = ({ cause, pays }: { cause: string; pays: string }): string =>
  `: ${cause === '' ? 'cause not known yet' : cause}. Pays: ${pays === '' ? 'not said yet' : pays}.`
