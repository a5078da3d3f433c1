'use client'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { When } from '../ui/when'
import { DraftNotice } from './draft-notice'
import type { TabDrafts } from './use-tab-draft'

type Props = {
  drafts: TabDrafts
  zone: string
  locale: string
}

/** What this tab had, put back; and what closed tabs left, to take up again or to remove. */
export function TabDraftNotice({ drafts, zone, locale }: Props) {
  const { offered, takeUp, remove } = drafts
  return (
    <>
      <DraftNotice draft={drafts} />
      {offered.length > 0 && (
        <Notice
          title={offered.length === 1 ? 'One draft is not finished' : `${offered.length} drafts are not finished`}
        >
          <ul className="plain-list">
            {offered.map(({ key, name, at }) => (
              <li key={key} className="row spread">
                <span>
                  <strong>{name}</strong>, <When at={at} zone={zone} locale={locale} />
                </span>
                <span className="row">
                  <Button onClick={() => takeUp(key)}>Take up</Button>
                  <Button variant="quiet" onClick={() => remove(key)}>
                    Remove
                  </Button>
                </span>
              </li>
            ))}
          </ul>
        </Notice>
      )}
    </>
  )
}
