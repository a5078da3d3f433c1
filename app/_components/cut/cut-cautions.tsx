import { Notice } from '@/app/_components/ui/notice'
import type { CutCaution } from '@/lib/core/cut/cautions'
import { cutCautionText } from '@/lib/words/cut-cautions'

/** Each caution of a cut in a box of its own. */
export const CutCautions = ({ cautions }: { cautions: readonly CutCaution[] }) =>
  cautions.map(cutCautionText).map((text) => (
    <Notice key={text} kind="caution" live={false}>
      <p>{text}</p>
    </Notice>
  ))
