import type { Car } from '../car.ts'
import { type Order, orderScenes } from '../change-orders.ts'
import type { Scene, Yard } from '../yard.ts'
import { estimateScenes } from './estimates.ts'

const MARA = 'Mara Ellwood'
const INES = 'Ines Halloran'

/** Number 7, which waits for the owner's yes. */
export const CARBURETTORS = 'Carburettors: new spindles and jets, bodies re-bushed'

/** Every change order in the order of its number. */
const orders: readonly Order[] = [
  {
    party: 'tarn',
    who: MARA,
    title: 'Front floors and both rear spring hangers',
    text: 'Blasting opened both front floors and the metal round the rear hangers. They can’t be patched.',
    reason: 'found',
    days: 6,
    lines: [
      { text: 'Sheet, sections and pressings', net: 64000 },
      { text: 'Cut out, made and welded', quantity: 38, unit: 'h', unitPrice: 5800 },
    ],
    raised: '-30 Tue 14',
    sent: '-30 Tue 15',
    answered: { who: INES, when: '-30 Wed 12:30', yes: true },
  },
  {
    party: 'bexwater',
    who: 'Jory Wenlock',
    title: 'Block: six liners, crack stitched at number four',
    text: 'The crack test showed a crack at number four. Sallow Street cast the liners; the re-bore falls away.',
    reason: 'found',
    days: 8,
    lines: [
      { text: 'Liners, cast to drawing', quantity: 6, unit: 'off', unitPrice: 8400 },
      { text: 'Bore, press in, stitch', quantity: 7, unit: 'h', unitPrice: 6400 },
      { text: 'Re-bore in the estimate', net: -31000 },
    ],
    raised: '-29 Tue 10',
    sent: '-29 Tue 11',
    answered: { who: INES, when: '-29 Thu 16', yes: true },
  },
  {
    party: 'quill',
    who: 'Ivo Quill',
    title: 'Second fuse box, wiring for driving lamps',
    text: 'As you asked on the telephone: lamps on their own relay and fuse.',
    reason: 'asked for',
    lines: [
      { text: 'Fuse box, relay, cable', net: 16800 },
      { text: 'Made into the loom', quantity: 5.5, unit: 'h', unitPrice: 4800 },
    ],
    raised: '-27 Mon 10',
    sent: '-27 Mon 11',
    answered: { who: INES, when: '-27 Wed 17', yes: true },
  },
  {
    party: 'tarn',
    who: MARA,
    title: 'Jacking points: two plates renewed',
    text: 'Both front plates are thin behind the sill.',
    reason: 'found',
    lines: [{ text: 'Plates made and welded', quantity: 3, unit: 'h', unitPrice: 5800 }],
    raised: '-25 Thu 9',
    sent: '-25 Thu 9:30',
    answered: { who: MARA, when: '-25 Thu 9:45', yes: true, text: 'Within the standing consent.' },
  },
  {
    party: 'tarn',
    who: MARA,
    title: 'Brake hoses: a set of five',
    text: 'The old hoses have swollen. Not a part to save.',
    reason: 'found',
    lines: [{ text: 'Hoses, a set', net: 12800 }],
    raised: '-21 Fri 9',
    sent: '-21 Fri 9:30',
    answered: { who: MARA, when: '-21 Fri 9:45', yes: true, text: 'Within the standing consent.' },
  },
  {
    party: 'northgate',
    who: 'Ada Rusk',
    title: 'Three pieces more to fill with copper',
    text: 'Under the old chromium three bezels are pitted deeper than they looked.',
    reason: 'found',
    lines: [{ text: 'Copper, fill, linish', quantity: 3, unit: 'off', unitPrice: 9500 }],
    raised: '-16 Mon 10',
    sent: '-16 Mon 11',
    answered: {
      who: INES,
      when: '-16 Tue 16',
      yes: true,
      text: 'Before they are refitted, please.',
    },
  },
  {
    party: 'bexwater',
    who: 'Jory Wenlock',
    title: CARBURETTORS,
    text: 'On the flow bench all three leak air at the spindles. New spindles alone won’t seal: the bodies are worn oval and must be bushed. It would never idle as it is.',
    reason: 'found',
    days: 4,
    lines: [
      { text: 'Spindles and jets', quantity: 3, unit: 'sets', unitPrice: 4600 },
      { text: 'Bodies bushed and line-reamed', quantity: 6, unit: 'h', unitPrice: 6400 },
      { text: 'Flow bench, matched as a set', quantity: 2.5, unit: 'h', unitPrice: 6400 },
      { text: 'Rebuild kits in the estimate', net: -9500 },
    ],
    raised: 'd-4 15',
    sent: 'd-3 9',
  },
  {
    party: 'thistle',
    who: 'Sorrel Penn',
    title: 'Carpets in wool with a bound edge',
    text: 'Instead of the loop pile in the estimate.',
    reason: 'asked for',
    lines: [{ text: 'More for wool, bound in hide', net: 48500 }],
    raised: 'd-3 10',
    sent: 'd-3 10:30',
    answered: { who: INES, when: 'd-2 16:30', yes: false, text: 'The loop pile is what it had.' },
  },
  {
    party: 'tarn',
    who: MARA,
    title: 'Boot floor: mat and edging',
    text: 'Not priced yet.',
    reason: 'asked for',
    lines: [{ text: 'Mat, cut to pattern', net: 16500 }],
    raised: 'd-1 14',
  },
]

/** The owner allows small extras in advance: up to a sum each, and all together. */
const CONSENT_EACH = 25_000
const CONSENT_TOTAL = 100_000

/** First prices, what the owner allows in advance, and every change since. */
export function moneyScenes(yard: Yard, car: Car): Scene[] {
  const consented = yard.calendar.at('-34 Tue 16:45')
  return [
    ...estimateScenes(yard, car),
    {
      at: consented,
      play: (yard) =>
        car.press(yard, {
          at: consented,
          who: INES,
          name: 'project.describe',
          input: { standingConsentEach: CONSENT_EACH, standingConsentTotal: CONSENT_TOTAL },
        }),
    },
    ...orders.flatMap((order) => orderScenes(yard, car, order)),
  ]
}
