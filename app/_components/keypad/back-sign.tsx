/** Drawn, since not every tablet has a face with this sign. */
export function BackSign({ className }: { className?: string | undefined }) {
  return (
    <svg viewBox="0 0 32 24" aria-hidden="true" focusable="false" className={className}>
      <path d="M10 3h20v18H10L2 12zM15 8l8 8M23 8l-8 8" />
    </svg>
  )
}
