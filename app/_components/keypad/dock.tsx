'use client'
import { createContext, useContext, useMemo, useRef, useState, type ReactNode, type RefObject } from 'react'
import type { Key } from './figure-text'
import { Keys } from './keys'
import styles from './keypad.module.css'

/** The cell that the keys type into. */
export type Docked = {
  readonly label: string
  readonly text: string
  readonly unit: string
  readonly units: readonly string[]
  readonly onKey: (key: Key) => void
  readonly onUnit: (unit: string) => void
  /** The cell is left: what is typed there is meant. */
  readonly onLeave: () => void
  readonly input: () => HTMLInputElement | undefined
}

/** The same for as long as the screen is there. */
type Deeds = {
  readonly activate: (grid: object) => void
  /** For the first grid of a screen: the keys have a cell before one is touched. */
  readonly activateFirst: (grid: object) => void
  readonly leave: (grid: object) => void
  readonly take: (cell: Docked) => void
  readonly pane: RefObject<HTMLDivElement | null>
}

/** `active`: the grid that the keys type into. */
type Place = Deeds & { readonly active: object | null }

const PlaceContext = createContext<Place | null>(null)
const CellContext = createContext<Docked | null>(null)

/** One keypad for all cells of a screen, whatever their kinds: it types into the cell that has or last had the focus. */
export function Dock({ children }: { children: ReactNode }) {
  const [cell, setCell] = useState<Docked | null>(null)
  const [active, activate] = useState<object | null>(null)
  const pane = useRef<HTMLDivElement>(null)
  const [deeds] = useState<Deeds>(() => ({
    activate,
    activateFirst: (grid) => activate((now) => now ?? grid),
    leave: (grid) => activate((now) => (now === grid ? null : now)),
    take: setCell,
    pane,
  }))
  const place = useMemo<Place>(() => ({ ...deeds, active }), [deeds, active])
  return (
    <PlaceContext value={place}>
      <CellContext value={cell}>{children}</CellContext>
    </PlaceContext>
  )
}

/** Null where no keypad is docked: a grid then brings its own. */
export const useDock = (): Place | null => useContext(PlaceContext)

/** What scrolls: the cells, and what is to be read beside them. */
export function DockPane({ className, children }: { className?: string | undefined; children: ReactNode }) {
  return (
    <div ref={useDock()?.pane} className={className}>
      {children}
    </div>
  )
}

const noUnits: readonly string[] = ['']

/** The docked keypad, under the name and the text of the cell that it types into. */
export function DockedKeys() {
  const cell = useContext(CellContext)
  const pane = useDock()?.pane

  function next() {
    const from = cell?.input()
    cell?.onLeave()
    // A cell that was left can bring a second one, to type the figure again.
    setTimeout(() => nextPlace(pane?.current ?? null, from)?.focus())
  }

  return (
    <div className={styles.docked}>
      <p className={styles.dockedCell} aria-hidden="true">
        <span>{cell?.label}</span>
        <span className={styles.dockedText}>
          {cell?.text || '–'} <small>{cell?.unit}</small>
        </span>
      </p>
      <Keys
        label={cell ? `Keypad for ${cell.label}` : 'Keypad'}
        onKey={(key) => cell?.onKey(key)}
        unit={cell?.unit ?? ''}
        units={cell?.units ?? noUnits}
        onUnit={(unit) => cell?.onUnit(unit)}
        onNext={next}
        nextLabel="Next"
      />
    </div>
  )
}

/** The next empty cell of the screen; after the last one the button that saves. */
export function nextPlace(pane: HTMLElement | null, from: HTMLInputElement | undefined): HTMLElement | null {
  const cells = [...(pane?.querySelectorAll<HTMLInputElement>('input[data-figure]') ?? [])]
  const after = cells.slice(from ? cells.indexOf(from) + 1 : 0)
  return after.find(({ value }) => value === '') ?? document.querySelector<HTMLElement>('[data-commit]')
}
