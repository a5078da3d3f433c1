import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import type { BenchLine } from '@/lib/words/bench-line'

type Props = { lines: readonly BenchLine[]; faults: readonly string[]; close?: boolean }

/** Wanted figures as they stand, each with where it comes from; what contradicts itself is said. */
export function WantedShown({ lines, faults, close = false }: Props) {
  return (
    <>
      {faults.map((fault) => (
        <Notice key={fault} kind="caution" live={false}>
          <p>{fault}</p>
        </Notice>
      ))}
      <DefinitionList close={close} items={lines.map(({ label, value, note }) => ({ label, value, note }))} />
    </>
  )
}
