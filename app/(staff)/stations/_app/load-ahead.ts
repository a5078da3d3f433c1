/** Every part of the station app that comes later: without the network it has to be here already. */
const later: readonly (() => Promise<unknown>)[] = [
  () => import('./queue-view'),
  () => import('./step-view'),
  () => import('./trouble'),
  () => import('./set-aside'),
  () => import('../[station]/heads/[visit]/_components/step-done'),
  () => import('../[station]/heads/[visit]/_components/notices'),
  () => import('../[station]/heads/[visit]/_components/others'),
  () => import('../[station]/heads/[visit]/_components/cell-asks'),
  () => import('../[station]/heads/[visit]/_components/side-forms'),
  () => import('../[station]/heads/[visit]/_components/step-conflict'),
  () => import('../[station]/heads/[visit]/_components/left-step'),
  () => import('../[station]/heads/[visit]/_components/left-draft'),
  () => import('../[station]/heads/[visit]/_components/step-draft-schema'),
  () => import('../[station]/heads/[visit]/_components/cut-table'),
  () => import('../[station]/heads/[visit]/_components/next-pass'),
  () => import('../[station]/heads/[visit]/_components/head-drawn'),
  () => import('../[station]/heads/[visit]/_components/flow-conditions'),
  () => import('../[station]/heads/[visit]/_components/flow-fields'),
  () => import('../[station]/heads/[visit]/_components/photo-field'),
  () => import('../[station]/heads/[visit]/_components/valve-sheet/valve-sheet'),
  () => import('../[station]/heads/[visit]/_components/second-check'),
  () => import('../[station]/heads/[visit]/_components/corner-inset-form'),
  () => import('@/app/_components/outbox/post-photo'),
  () => import('@/app/_components/photo/add-photo'),
  () => import('@/app/_components/photo/photo-strip'),
  () => import('@/app/_components/form/draft-schemas'),
]

/** Fetches, one after the other, what a screen may need later. What could not be fetched is fetched when it is shown. */
export async function loadAhead(stopped: () => boolean): Promise<void> {
  for (const part of later) if (!stopped()) await part().catch(() => {})
}
