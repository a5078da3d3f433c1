'use client'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import type { Draft } from './use-draft'

export function DraftNotice({ draft }: { draft: Draft }) {
  if (!draft.restored) return null
  return (
    <Notice title="Restored what you had typed">
      <div className="row">
        <Button onClick={draft.discard}>Discard it</Button>
      </div>
    </Notice>
  )
}
