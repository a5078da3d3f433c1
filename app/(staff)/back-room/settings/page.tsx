import { Link } from '@/app/_components/ui/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Pager } from '@/app/_components/ui/pager'
import { When } from '@/app/_components/ui/when'
import { WantedShown } from '@/app/_components/wanted/wanted-shown'
import { capital } from '@/lib/core/route/words'
import { settingGroups, settingWords } from '@/lib/core/shop/setting-fields'
import { seeSettings, type SettingsVersion } from '@/lib/use-cases/settings/see-settings'
import { shopLocale, type ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { insetWords } from '@/lib/words/corner-inset'
import { PageHead } from '../_components/page-head'
import { CalendarForm } from './_components/calendar-form'
import { CornerInsetForm } from './_components/corner-inset-form'
import { ValveListsForm } from './_components/valve-lists-form'
import { Behind } from '../steps/_components/behind'

export const metadata = { title: 'Limits and tolerances' }

export default async function SettingsPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('settings.change')
  const { current, wanted, history, more, behind } = await seeSettings(actor, page)
  const manner = await shopLocale()
  return (
    <>
      <PageHead
        up={['/back-room', 'Back room']}
        title="Limits and tolerances"
        action={
          <ButtonLink href="/back-room/settings/change" variant="main">
            Change
          </ButtonLink>
        }
      >
        <p className="soft">
          These decide which steps a cut needs and what is out of tolerance. The makers of the head, gasket and engine
          come first.
        </p>
        <Behind count={behind} />
      </PageHead>
      {settingGroups.map((group) => (
        <section key={group.title} className="part">
          <h2>{group.title}</h2>
          <DefinitionList
            items={group.fields.map((field) => ({
              label: field.label,
              value: settingWords(field, current.values[field.key]),
            }))}
          />
        </section>
      ))}
      <section className="part">
        <h2>Working days and holidays</h2>
        <p className="soft">Expected finish and proposed promise leave the other days out.</p>
        <CalendarForm calendar={current.values.calendar} />
      </section>
      <section className="part">
        <h2>Where corners are touched</h2>
        <p>
          {current.values.cornerInset === null
            ? 'Not set. It is asked where the first corner thickness is read.'
            : `${capital(insetWords(current.values.cornerInset))}. A casting’s own record comes first.`}
        </p>
        <CornerInsetForm inset={current.values.cornerInset} />
      </section>
      <section className="part">
        <h2>Wanted figures</h2>
        {wanted.lines.length > 0 ? (
          <WantedShown {...wanted} />
        ) : (
          <p className="soft">None for the whole shop: each job or casting record says its own.</p>
        )}
        <div>
          <ButtonLink href="/back-room/settings/wanted">Change the wanted figures</ButtonLink>
        </div>
      </section>
      <section className="part">
        <h2>Shims and seat angles</h2>
        <p className="soft">
          What machinists pick from on the valve sheet. The first values are common practice, from memory.
        </p>
        <ValveListsForm lists={current.values.valveLists} />
      </section>
      <section className="part" aria-labelledby="history">
        <h2 id="history">Earlier versions</h2>
        {history.length === 0 && page === 1 ? (
          <p className="soft">Never changed: these are the values every shop starts with.</p>
        ) : (
          <History versions={history} manner={manner} />
        )}
        <Pager page={page} more={more} href={(to) => `/back-room/settings?page=${to}`} />
      </section>
    </>
  )
}

function History({ versions, manner }: { versions: readonly SettingsVersion[]; manner: ShopLocale }) {
  return (
    <ol className="plain-list" reversed>
      {versions.map(({ version, at, by, reason, changes, changedSteps }) => (
        <li key={version} className="stack">
          <p>
            <strong>Version {version}</strong>, {by}, <When at={at} zone={manner.timeZone} locale={manner.locale} />:{' '}
            {reason}
          </p>
          <ul>
            {changes.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
          {changedSteps && (
            <p>
              <Link href={`/back-room/steps/restore?to=${version - 1}`}>
                Steps as they were before version {version}
              </Link>
            </p>
          )}
        </li>
      ))}
    </ol>
  )
}
