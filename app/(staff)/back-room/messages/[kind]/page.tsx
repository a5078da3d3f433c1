import { notFound } from 'next/navigation'
import { When } from '@/app/_components/ui/when'
import { messageKinds, type MessageKind } from '@/lib/core/messages/kinds'
import { seeText, type TextHistory } from '@/lib/use-cases/messages/see-texts'
import { shopLocale, type ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { messageKindLabels } from '@/lib/words/messages'
import { PageHead } from '../../_components/page-head'
import { TextForm } from '../_components/text-form'

type Props = { params: Promise<{ kind: string }> }

const kindOf = async (params: Props['params']): Promise<MessageKind> => {
  const asked = (await params).kind
  return messageKinds.find((kind) => kind === asked) ?? notFound()
}

export async function generateMetadata({ params }: Props) {
  return { title: `Message: ${messageKindLabels[await kindOf(params)]}` }
}

export default async function TextPage({ params }: Props) {
  const kind = await kindOf(params)
  const actor = await requirePerson('settings.change')
  const { text, hasServer, history } = await seeText(actor, kind)
  return (
    <>
      <PageHead up={['/back-room/messages', 'Messages']} title={messageKindLabels[kind]} />
      <TextForm text={text} hasServer={hasServer} by={history[0]?.by ?? ''} />
      <section className="part" aria-label="Changes">
        <h2>Changes</h2>
        {history.length === 0 ? (
          <p className="soft">Never changed: this is the wording that comes with the app.</p>
        ) : (
          <History history={history} manner={await shopLocale()} />
        )}
      </section>
    </>
  )
}

function History({ history, manner }: { history: TextHistory; manner: ShopLocale }) {
  return (
    <ol className="plain-list" reversed>
      {history.map(({ seq, by, at, changes }) => (
        <li key={seq} className="stack">
          <p>
            <strong>{by}</strong>, <When at={at} zone={manner.timeZone} locale={manner.locale} />
          </p>
          <ul>
            {changes.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
        </li>
      ))}
    </ol>
  )
}
