'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { nothingYet } from '../ui/nothing-yet'

/** Devices that are no tablets do not load it. */
export const TabletWatch = dynamic(() => untilHere(() => import('./tablet-watch').then((file) => file.TabletWatch)), {
  loading: nothingYet,
})
