import type { ReactNode } from 'react'
import { Table } from '@/app/_components/ui/table'
import { requirePerson } from '@/lib/web/require-actor'
import { dutyLines, keyLines, placeLines, wordLines } from './words'

export const metadata = { title: 'Help' }

export default async function HelpPage() {
  await requirePerson('job.see')
  return (
    <>
      <h1>Help</h1>
      <Part id="places" title="Where things are">
        <Lines label="Places, one a line" first="Place" second="What is there" lines={placeLines} />
      </Part>
      <Part id="deeds" title="How to">
        <Lines label="How to, one a line" first="To" second="Do this" lines={dutyLines} />
      </Part>
      <Part id="keys" title="Keys">
        <Lines label="Keys, one a line" first="Key" second="What it does" lines={keyLines} />
      </Part>
      <Part id="words" title="Words">
        <Lines label="Words, one a line" first="Word" second="What it means here" lines={wordLines} />
      </Part>
      <Part id="care" title="Safety">
        <p>
          Brasstag calculates; the machinist decides. Follow the makers’ instructions for deck thickness, gasket and
          torque. Piston-to-valve clearance after a cut is an estimate: check it at assembly, because contact destroys
          an engine. Follow local rules for machine guards, solvents, dust and lifting.
        </p>
      </Part>
    </>
  )
}

function Part({ id, title, children }: { id: string; title: string; children: ReactNode }) {
  return (
    <section className="part" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  )
}

type LinesProps = {
  label: string
  first: string
  second: string
  lines: readonly (readonly [string, string])[]
}

function Lines({ label, first, second, lines }: LinesProps) {
  return (
    <Table
      label={label}
      columns={[
        { id: 'first', label: first, head: true },
        { id: 'second', label: second },
      ]}
      rows={lines.map(([name, meaning]) => ({ id: name, cells: { first: name, second: meaning } }))}
    />
  )
}
