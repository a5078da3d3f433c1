import { describe, expect, it } from 'vitest'
import type { Dossier } from '@/lib/dossier/dossier'
import { specWanted } from '@/lib/dossier/spec/spec-wanted'
import { figure } from '@/tests/core/wanted/any-wanted'

const head = (wanted: Dossier['wanted'], finishAsked = '') =>
  ({ wanted, visit: { job: { finishAsked } } }) as Pick<Dossier, 'wanted' | 'visit'>

describe('what a figure on the spec sheet should have come to', () => {
  it('a wanted one at each port; alike ports are said once', () => {
    const widths = head({ intakeSeatWidthIn: figure(0.06), exhaustSeatWidthIn: figure(0.08) })
    expect(specWanted(widths, 'seat-width', ['1-intake', '1-exhaust'])).toEqual({
      label: 'wanted',
      value: 'intake 0.0600 in, exhaust 0.0800 in',
    })
    const angles = head({ intakeSeatAngleDeg: figure(45), exhaustSeatAngleDeg: figure(45) })
    expect(specWanted(angles, 'seat-angles', ['1-intake'])).toEqual({ label: 'wanted', value: '45.0°, both' })
  })

  it('a range, and a limit, each by its own word', () => {
    const guides = head({ intakeGuideLeastIn: figure(0.0012), intakeGuideMostIn: figure(0.002) })
    expect(specWanted(guides, 'guide-clearance', ['1-intake'])).toEqual({
      label: 'wanted',
      value: 'intake 0.0012 to 0.0020 in',
    })
    const limits = head({ runoutMostIn: figure(0.0015), straightAcrossMostIn: figure(0.003) })
    expect(specWanted(limits, 'runout', ['1-intake'])).toEqual({ label: 'limit', value: '0.0015 in' })
    expect(specWanted(limits, 'straightness', ['across', 'along'])).toEqual({
      label: 'limit',
      value: 'across 0.0030 in',
    })
  })

  it('a spring pressure that was read once for all valves has both figures', () => {
    const springs = head({
      intakeSeatPressureLbf: figure(130),
      exhaustSeatPressureLbf: figure(130),
      intakeOpenPressureLbf: figure(340),
      exhaustOpenPressureLbf: figure(350),
    })
    expect(specWanted(springs, 'spring-pressure', ['seat', 'open'])?.value).toBe(
      'pressure on the seat 130 lbf, both; pressure, valve open intake 340 lbf, exhaust 350 lbf',
    )
    expect(specWanted(springs, 'seat-pressure', ['1-intake', '1-exhaust'])?.value).toBe('130 lbf, both')
  })

  it('the finish in the words of whoever asked; nothing where nobody said', () => {
    expect(specWanted(head({}, '30 µin or better'), 'finish', [''])).toEqual({
      label: 'wanted',
      value: '30 µin or better',
    })
    expect(specWanted(head({}), 'finish', [''])).toBeNull()
    expect(specWanted(head({}), 'seat-width', ['1-intake'])).toBeNull()
    expect(specWanted(head({ runoutMostIn: figure(0.002) }), 'thickness', ['intake-1'])).toBeNull()
  })
})
