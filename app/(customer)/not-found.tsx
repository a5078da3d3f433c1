import type { Metadata } from 'next'

export const metadata: Metadata = { title: 'Link not found' }

export default function LinkNotFound() {
  return (
    <>
      <h1>This link does not work</h1>
      <p>It may be incomplete, or it has expired. Ask the shop for a new one.</p>
    </>
  )
}
