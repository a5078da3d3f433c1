'use client'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'

/** Copies a text. A page that did not come over HTTPS may not, on most browsers: then it says so. */
export function CopyText({ text }: { text: string }) {
  const [said, setSaid] = useState('')
  async function copy() {
    try {
      await navigator.clipboard.writeText(text)
      setSaid('Copied.')
    } catch {
      setSaid('This browser does not copy here by itself: mark the address above and copy it.')
    }
  }
  return (
    <div className="row">
      <Button onClick={copy}>Copy the link</Button>
      <span role="status">{said}</span>
    </div>
  )
}
