'use client'
import { createContext, useContext, type ReactNode } from 'react'
import { SwitchPerson } from './switch-person'

/** Who is at this enrolled tablet, by name; null on any other device. */
const AtTabletContext = createContext<string | null>(null)

export const AtTablet = ({ name, children }: { name: string | null; children: ReactNode }) => (
  <AtTabletContext value={name}>{children}</AtTabletContext>
)

/** On a screen that has no frame around it: who is at the tablet, and the way to the next one. Elsewhere nothing. */
export function SwitchHere() {
  const name = useContext(AtTabletContext)
  return name === null ? null : <SwitchPerson name={name} />
}
