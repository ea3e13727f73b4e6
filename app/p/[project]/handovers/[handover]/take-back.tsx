'use client'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import type { Handover } from '@/lib/record/entities/things.ts'
import { label } from '@/lib/words/labels.ts'

/** Takes a release back while nobody has received it. */
export const TakeBack = ({ handover }: { readonly handover: Handover }) => (
  <ReasonFold
    sheet
    name="handover.takeBack"
    input={{ handover: handover.id }}
    label={label('handover.takeBack')}
    summary="Released by mistake?"
    question="Why is it taken back?"
    unsaid="Say why: the record keeps both presses."
  />
)
