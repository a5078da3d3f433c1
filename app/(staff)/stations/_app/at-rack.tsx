'use client'
import type { ReactNode } from 'react'
import { usePlace } from './use-place'

/** The choice of a station stays under the station app while its screens are shown in its place. */
export const AtRack = ({ children }: { children: ReactNode }) => (usePlace()?.is === 'rack' ? children : null)
