import { memo } from 'react'
import { Mark } from '@/app/_ui/mark.tsx'
import { markOf } from '@/app/_ui/state-mark.tsx'
import { BEHIND, BESIDE } from '@/lib/plan/drawn/in-rows.ts'
import { type Hung, TILE_PX } from '@/lib/plan/drawn/wall.ts'
import { type ShownState, stageNumber } from '@/lib/words/labels.ts'
import { rem } from './rem.ts'

/** A stage's card on the wall: as long as its days, its number and mark in it or behind it, its name where there is room. */
export const TileButton = memo(function TileButton({
  tile,
  state,
  says,
  isAt,
  isOpen,
  onPress,
  onFocus,
}: {
  readonly tile: Hung
  readonly state: ShownState
  /** All of it in one sentence. */
  readonly says: string
  /** The one that the tab key comes to. */
  readonly isAt: boolean
  readonly isOpen: boolean
  readonly onPress: (stage: string) => void
  readonly onFocus: (stage: string) => void
}) {
  const { stage, laid, words, nameFrom, nameTo, left, right, cure, from, to } = tile
  const place = (begin: number, end: number) => ({
    left: rem(begin - nameFrom),
    width: rem(end - begin),
  })
  const numberAndMark = (
    <>
      <b className="num">{stageNumber(stage.number)}</b>
      <Mark name={markOf(state)} />
    </>
  )
  const behind = right + cure + BEHIND
  return (
    <button
      type="button"
      className={['tile', laid.onRun ? 'tile-run' : '', isOpen ? 'tile-open' : ''].join(' ').trim()}
      style={{ left: rem(nameFrom), top: rem(tile.y - TILE_PX / 2), width: rem(nameTo - nameFrom) }}
      aria-label={says}
      aria-expanded={isOpen}
      tabIndex={isAt ? 0 : -1}
      data-stage={stage.id}
      onClick={() => onPress(stage.id)}
      onFocus={() => onFocus(stage.id)}
    >
      {cure > 0 && (
        <span className="tile-cure" style={place(right, right + cure)}>
          {cure >= WORD_PX ? 'cure' : ''}
        </span>
      )}
      <span
        className={words === 'inside' ? 'tile-bar tile-long' : 'tile-bar'}
        style={place(left, right)}
      >
        {tile.holdsNumber && numberAndMark}
        {words === 'inside' && <span>{stage.name}</span>}
      </span>
      {!tile.holdsNumber && (
        <span className="tile-behind" style={place(behind, to)}>
          {numberAndMark}
        </span>
      )}
      {words === 'right' && (
        <span className="tile-name" style={place(to + BESIDE, nameTo)}>
          <span>
            <span>{stage.name}</span>
          </span>
        </span>
      )}
      {words === 'left' && (
        <span className="tile-name tile-before" style={place(nameFrom, from - BESIDE)}>
          <span>
            <span>{stage.name}</span>
          </span>
        </span>
      )}
    </button>
  )
})

/** A cure this long has room for its word. */
const WORD_PX = 40
