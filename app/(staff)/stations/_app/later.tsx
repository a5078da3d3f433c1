'use client'
import dynamic from 'next/dynamic'
import { Loading } from '@/app/_components/ui/loading'

const loading = () => <Loading />

/** One screen does not wait for the other's script: `load-ahead.ts` fetches what is not shown yet while nobody waits. */
export const QueueView = dynamic(() => import('./queue-view').then((file) => file.QueueView), { loading })
export const StepView = dynamic(() => import('./step-view').then((file) => file.StepView), { loading })
