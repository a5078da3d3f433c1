import type { DemoJob } from './demo-job'

/** Working days before today and the time on the wall, or minutes before now. */
type When = { readonly daysAgo: number; readonly time: string } | { readonly minutesAgo: number }

export type Act = { readonly when: When; readonly what: () => Promise<unknown> }

/** A job told act by act; the acts of all jobs are lived in the order of their times. */
export type Story = (job: DemoJob) => readonly Act[]

export const on = (daysAgo: number, time: string, what: () => Promise<unknown>): Act => ({
  when: { daysAgo, time },
  what,
})

export const ago = (minutesAgo: number, what: () => Promise<unknown>): Act => ({ when: { minutesAgo }, what })
