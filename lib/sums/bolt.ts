import * as z from 'zod/mini'
import { choice, words } from './fields.ts'
import { type Answer, fault, refuse } from './sum.ts'

/** What a torque must know of its bolt besides figures. */
export const boltFields = {
  bolt: choice(
    'What bolt',
    [
      'ordinary',
      'head, main or rod',
      'tightened by angle',
      're-used stretch bolt',
      're-used stretch bolt, its maker allows it',
    ],
    {
      ordinary: 'An ordinary one',
      'head, main or rod': 'Head, main or rod bolt',
      'tightened by angle': 'One that is tightened by angle',
      're-used stretch bolt': 'A stretch bolt, used before',
      're-used stretch bolt, its maker allows it':
        'A stretch bolt used before, which its maker allows',
    },
  ),
  figureFor: choice('The figure is for', ['dry', 'oiled'], {
    dry: 'a dry thread',
    oiled: 'an oiled one',
  }),
  thread: choice('The thread is', ['dry', 'oiled'], { dry: 'dry', oiled: 'oiled' }),
  safety: choice(
    'Safety bolt',
    ['yes', 'no'],
    { yes: 'yes', no: 'no' },
    'Brakes, steering, suspension, wheels, restraints.',
  ),
  calibrated: z.optional(
    words('Wrench calibrated on', 'As on its certificate, 2026-03-31; asked on a safety bolt.'),
  ),
}

type Bolt = z.infer<z.ZodMiniObject<typeof boltFields>>

/** Why a bolt isn't tightened so; null where it may be. */
export function notToTighten({ bolt, figureFor, thread, safety, calibrated }: Bolt): Answer | null {
  if (bolt === 're-used stretch bolt')
    return refuse(
      fault(
        'bolt',
        'What bolt: a stretch bolt is not used again unless its maker allows it. Fit new ones.',
      ),
    )
  if (figureFor !== thread)
    return refuse(
      fault(
        'thread',
        `The thread is ${thread}, and the figure is for one that is ${figureFor}: it isn’t valid here. Find the figure for this thread.`,
      ),
    )
  if (safety === 'yes' && calibrated === undefined)
    return refuse(
      fault(
        'calibrated',
        'Wrench calibrated on: a safety bolt wants the day. Take it from the certificate.',
      ),
    )
  if (calibrated !== undefined && !isDay(calibrated))
    return refuse(fault('calibrated', 'Wrench calibrated on: a day such as 2026-03-31.'))
  return null
}

/** How thread and wrench stand, for the working. */
export const boltSaid = ({ thread, calibrated }: Bolt): string =>
  calibrated === undefined
    ? `Thread ${thread}.`
    : `Thread ${thread}; wrench calibrated on ${calibrated}, in date for 12 months or 5000 cycles unless the shop’s procedure says otherwise.`

const isDay = (text: string): boolean => z.iso.date().safeParse(text).success
