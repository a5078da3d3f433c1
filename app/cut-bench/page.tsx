import { Frame } from '@/app/_components/frame'
import { seeBench } from '@/lib/use-cases/cut-bench/see-bench'
import { requirePerson } from '@/lib/web/require-actor'
import { Bench } from './bench'

export const metadata = { title: 'Cut bench' }

export default async function CutBenchPage() {
  const actor = await requirePerson('cut-bench.see', '/cut-bench')
  const { castings, settings } = await seeBench(actor)
  return (
    <Frame place="cut-bench" actor={actor}>
      <h1>Can you get it to so many cc?</h1>
      <p className="soft">Nothing typed here is kept. A plan that counts is made on the job.</p>
      <Bench castings={castings} settings={settings} />
    </Frame>
  )
}
