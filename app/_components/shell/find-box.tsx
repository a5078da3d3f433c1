'use client'
import { Link } from '@/app/_components/ui/link'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { useEffect, useRef, useState, type FocusEvent, type FormEvent, type KeyboardEvent } from 'react'
import styles from './find-box.module.css'
import { HitLine } from './hit-line'
import { useFound } from './use-found'

/**
 * One box for everything. What is found shows while one types; Enter asks the results page, which goes straight to a tag
 * or job that was typed or scanned whole: a scanner types and presses Enter faster than any list can show.
 */
export function FindBox() {
  const pathname = usePathname()
  const params = useSearchParams()
  const asked = pathname === '/find' ? (params.get('q') ?? '') : ''
  // At the stations what is scanned opens there: "" leaves it to the device.
  const station = /^\/stations(?:\/([a-z-]+))?/.exec(pathname)
  return <Box key={`${pathname} ${asked}`} asked={asked} station={station ? (station[1] ?? '') : undefined} />
}

/** Begins anew on each page: what was asked for is kept on the page of its results. */
function Box({ asked, station }: { asked: string; station: string | undefined }) {
  const [text, setText] = useState(asked)
  const [open, setOpen] = useState(false)
  const box = useRef<HTMLDivElement>(null)
  const input = useRef<HTMLInputElement>(null)
  const router = useRouter()
  const found = useFound('anything', open ? text : '')
  useFocusKey(input)
  useSelectOnFocus(input)

  function leave(event: FocusEvent) {
    if (!box.current?.contains(event.relatedTarget)) setOpen(false)
  }

  /** Before the page is awake the form goes to the same address by itself. */
  function ask(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    setOpen(false)
    const said = [...new FormData(event.currentTarget)].map(([name, value]) => [name, String(value)])
    router.push(`/find?${new URLSearchParams(said)}`)
  }

  function walk(event: KeyboardEvent) {
    if (event.key === 'Escape') {
      setOpen(false)
      input.current?.focus()
    }
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
    const stops = [input.current, ...(box.current?.querySelectorAll('a') ?? [])]
    const at = stops.findIndex((stop) => stop === document.activeElement)
    const next = stops[at + (event.key === 'ArrowDown' ? 1 : -1)]
    if (at < 0 || !next) return
    event.preventDefault()
    next.focus()
  }

  return (
    <div ref={box} className={styles.find} role="search" onBlur={leave} onKeyDown={walk}>
      <form action="/find" className={styles.form} onSubmit={ask}>
        <label htmlFor="find-box" className="visually-hidden">
          Find by tag, job, customer, phone or casting mark
        </label>
        <input
          ref={input}
          id="find-box"
          name="q"
          type="search"
          placeholder="Tag, job, customer…"
          defaultValue={asked}
          maxLength={120}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          enterKeyHint="search"
          onChange={(event) => {
            setText(event.target.value)
            setOpen(true)
          }}
        />
        {station !== undefined && <input type="hidden" name="at" value={station} />}
        <button type="submit">Find</button>
      </form>
      <p role="status" className="visually-hidden">
        {open && found && `${found.hits.length} found`}
      </p>
      {open && found && (
        <div className={styles.hits}>
          {found.hits.length === 0 ? (
            <p>Nothing found for “{text.trim()}”.</p>
          ) : (
            <ul aria-label="Found">
              {found.hits.map((hit) => (
                <li key={hit.href}>
                  <Link href={hit.href} onClick={() => setOpen(false)}>
                    <HitLine hit={hit} locale={found.locale} />
                  </Link>
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
    </div>
  )
}

/**
 * A new text takes the place of the old. By the browser's own event: React tells a focus that came before its script once
 * more after it, and what was scanned meanwhile would be selected and lost.
 */
function useSelectOnFocus(input: { readonly current: HTMLInputElement | null }) {
  useEffect(() => {
    const box = input.current
    const select = () => box?.select()
    box?.addEventListener('focus', select)
    return () => box?.removeEventListener('focus', select)
  }, [input])
}

/** "/" goes to the box from anywhere that is not a field. */
function useFocusKey(input: { readonly current: HTMLInputElement | null }) {
  useEffect(() => {
    function press(event: globalThis.KeyboardEvent) {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return
      if (event.target instanceof Element && event.target.closest('input, textarea, select, dialog[open]')) return
      event.preventDefault()
      input.current?.focus()
    }
    document.addEventListener('keydown', press)
    return () => document.removeEventListener('keydown', press)
  }, [input])
}
