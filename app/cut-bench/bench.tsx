'use client'
import { useForm, useWatch } from 'react-hook-form'
import { CutChoice, type TypedCut } from '@/app/_components/cut/cut-choice'
import { PlanPreview } from '@/app/_components/cut/plan-preview'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { PlanGround } from '@/lib/core/options/plan-record-of'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import { thouPerCc, usualThouPerCc } from '@/lib/core/rate/rate'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { BenchCasting } from '@/lib/use-cases/cut-bench/see-bench'

type Asked = TypedCut & { castingId: string; presentCc: string; targetCc: string }
type Props = { castings: readonly BenchCasting[]; settings: ShopSettings }

const figure = (text: string): number | null => {
  const parsed = parseFigure(text, 'chamberVolume')
  return parsed.ok ? parsed.value.value : null
}

const wrong = (text: string): string | undefined => {
  if (text.trim() === '') return undefined
  const parsed = parseFigure(text, 'chamberVolume')
  return parsed.ok ? undefined : parsed.refusal.message
}

/** The question of the counter and the telephone, answered as it is typed. */
export function Bench({ castings, settings }: Props) {
  const form = useForm<Asked>({
    defaultValues: {
      castingId: castings[0]?.id ?? '',
      presentCc: '',
      targetCc: '',
      kind: 'flat',
      splitBy: 'margin',
      flatIn: '',
      angleIn: '',
      angleDeg: '',
      stopAtIn: '',
      sinkIn: '',
    },
  })
  const typed = { ...form.formState.defaultValues, ...useWatch({ control: form.control }) } as Asked
  const casting = castings.find((one) => one.id === typed.castingId)
  return (
    <form className="stack-large" onSubmit={(event) => event.preventDefault()}>
      <div className="columns">
        <Select
          label="Casting"
          empty="Not on record"
          options={castings.map(({ id, name }) => ({ value: id, label: name }))}
          {...form.register('castingId')}
        />
        <TextInput
          label="Chamber now, cc"
          hint={
            casting?.facts.nominalCc === undefined ? undefined : `Empty: nominal ${casting.facts.nominalCc}.`
          }
          inputMode="decimal"
          error={wrong(typed.presentCc)}
          {...form.register('presentCc')}
        />
        <TextInput
          label="Wanted, cc"
          inputMode="decimal"
          error={wrong(typed.targetCc)}
          {...form.register('targetCc')}
        />
      </div>
      <CutChoice text={form.register} typed={typed} marginCc={settings.vendorMarginCc} />
      <PlanPreview ground={groundOf(casting, typed, settings)} typed={typed} />
    </form>
  )
}

function groundOf(casting: BenchCasting | undefined, typed: Asked, settings: ShopSettings): PlanGround {
  const facts = casting?.facts ?? {}
  const rate = rateOfRecord(facts)
  const presentCc = figure(typed.presentCc) ?? facts.nominalCc
  return {
    heads: [{ tag: 'the head', chambersCc: presentCc === undefined ? [] : [presentCc], thicknessIn: null }],
    casting: facts,
    deepEdge: casting?.deepEdge ?? 'exhaust',
    engine: { layout: 'unknown', camInHead: null },
    presentNominal: true,
    targetCc: figure(typed.targetCc),
    toleranceCc: settings.ccToleranceCc,
    marginCc: settings.vendorMarginCc,
    thouPerCc: rate.ok ? thouPerCc(rate.value).thouPerCc : usualThouPerCc,
    rateWords:
      facts.openingAreaIn2 === undefined ? 'the usual figure: not proven' : 'from the traced opening',
    limits: {
      angleCautionDeg: settings.angleCautionDeg,
      angleLimitDeg: facts.largestAngleDeg ?? settings.angleLimitDeg,
      thicknessLeastIn: facts.thicknessLeastIn ?? null,
      classFlatOnly: false,
      classMinCc: null,
      classMaxCutIn: null,
    },
    ptvLeastIn: { intake: settings.ptvLeastIntakeIn, exhaust: settings.ptvLeastExhaustIn },
  }
}
