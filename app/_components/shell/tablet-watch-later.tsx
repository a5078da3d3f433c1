'use client'
import dynamic from 'next/dynamic'
import { nothingYet } from '../ui/nothing-yet'

/** Devices that are no tablets do not load it. */
export const TabletWatch = dynamic(() => import('./tablet-watch').then((file) => file.TabletWatch), {
  loading: nothingYet,
})
