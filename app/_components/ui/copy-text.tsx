'use client'
import { useState } from 'react'
import { Button } from './button'

/** Copies a text. A page that did not come over HTTPS may not, on most browsers: then it says so. */
export function CopyText({ text, label = 'Copy the link' }: { text: string; label?: string }) {
  const [said, setSaid] = useState('')
  async function copy() {
    try {
      await navigator.clipboard.writeText(text)
      setSaid('Copied.')
    } catch {
      setSaid('This browser does not copy here by itself: mark the text above and copy it.')
    }
  }
  return (
    <div className="row">
      <Button onClick={copy}>{label}</Button>
      <span role="status">{said}</span>
    </div>
  )
}
