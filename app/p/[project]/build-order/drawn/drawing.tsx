'use client'
import {
  type CSSProperties,
  type KeyboardEvent,
  useCallback,
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import { Mark } from '@/app/_ui/mark.tsx'
import { markOf } from '@/app/_ui/state-mark.tsx'
import { partiesHere } from '@/app/_ui/use-desk.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { nextTile } from '@/lib/plan/drawn/next-tile.ts'
import { DAY_PX, wallOf } from '@/lib/plan/drawn/wall.ts'
import type { LaidOut } from '@/lib/plan/laid-out.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { all } from '@/lib/record/table.ts'
import { type ShownState, stageNumber, stateLabel } from '@/lib/words/labels.ts'
import { drawnWords, floatShort, laidDays } from '@/lib/words/laid.ts'
import { partyName } from '@/lib/words/names.ts'
import { rem } from './rem.ts'
import { StageDetail } from './stage-detail.tsx'
import { TileButton } from './tile-button.tsx'
import { useSight } from './use-sight.ts'
import { useZoom, zooms } from './use-zoom.ts'
import { WallHead } from './wall-head.tsx'
import { WallStrings } from './wall-strings.tsx'

/**
 * The build order on a wall: a lane a shop, a card a stage, as long as its days; the critical run is a knotted string, today another.
 * One card is in the tab order; the arrow keys lead to the others.
 */
export function Drawing({
  stages,
  laidOut,
  stateOf,
}: {
  readonly stages: readonly Stage[]
  readonly laidOut: LaidOut
  readonly stateOf: (stage: Stage) => ShownState
}) {
  const { record, reader } = useProject()
  const { now, timeZone } = reader
  const [zoom, setZoom] = useZoom(reader.person)
  const links = useMemo(
    () => all(record.links).filter(({ removedAt }) => removedAt === null),
    [record.links],
  )
  const lanes = useMemo(() => {
    const here = partiesHere(record).map(({ id }): string => id)
    return [...new Set([...here, ...stages.map(({ party }): string => party)])]
  }, [record, stages])
  const wall = useMemo(
    () => wallOf(stages, links, laidOut, lanes, { zoom, now, zone: timeZone }),
    [stages, links, laidOut, lanes, zoom, now, timeZone],
  )
  const [at, setAt] = useState<string | null>(null)
  const [open, setOpen] = useState<string | null>(null)
  const region = useRef<HTMLDivElement>(null)
  const held = wall.tiles.get(at ?? '')
  const toToday = useSight(region, wall, held === undefined ? null : held.left / DAY_PX[zoom])
  const saysId = useId()

  const first = [...wall.tiles.values()].find(({ laid }) => laid.tense !== 'over')
  const tabbed = wall.tiles.has(at ?? '') ? at : (first?.id ?? wall.tiles.keys().next().value)
  const opened = wall.tiles.get(open ?? '')
  const press = useCallback((id: string) => setOpen((was) => (was === id ? null : id)), [])
  const focus = useCallback((id: string) => {
    setAt(id)
    // What lies behind the cards follows the keys.
    setOpen((was) => (was === null ? null : id))
  }, [])
  const zoomBy = (by: number) => setZoom(zooms[zooms.indexOf(zoom) + by] ?? zoom)
  const goTo = (id: string) =>
    region.current?.querySelector<HTMLElement>(`[data-stage="${id}"]`)?.focus()

  function onKeyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const next = nextTile(wall, links, tabbed ?? '', event.key)
    if (next !== null) goTo(next.id)
    else if (event.key === '+' || event.key === '=') zoomBy(-1)
    else if (event.key === '-' || event.key === '−') zoomBy(1)
    else if (event.key === 't' || event.key === 'T') toToday()
    else if (event.key === 'Escape' && open !== null) setOpen(null)
    else if (!event.key.startsWith('Arrow')) return
    event.preventDefault()
  }

  useLayoutEffect(() => {
    if (open !== null && !wall.tiles.has(open)) setOpen(null)
  }, [open, wall])

  const says = (stage: Stage): string => {
    const tile = wall.tiles.get(stage.id)
    if (tile === undefined) return stage.name
    const slips = floatShort(tile.laid)
    return [
      `${stageNumber(stage.number)} ${stage.name}`,
      stateLabel(stateOf(stage)),
      partyName(stage.party, record),
      laidDays(tile.laid, reader),
      ...(tile.laid.onRun ? ['on the critical run'] : slips === '' ? [] : [`may slip ${slips}`]),
    ].join(', ')
  }
  const sizes: CSSProperties & { readonly [name: `--${string}`]: string } = {
    '--day': rem(DAY_PX[zoom]),
    '--days': rem(wall.width),
  }
  const shown = [...new Set(stages.map(stateOf))]
  return (
    <section className="drawn-place stack tight">
      <div className="row spread">
        <fieldset className="row drawn-zoom">
          <legend className="vh">How near</legend>
          {zooms.map((one) => (
            <button
              key={one}
              type="button"
              className={one === zoom ? 'btn btn-small' : 'btn btn-line btn-small'}
              aria-pressed={one === zoom}
              onClick={() => setZoom(one)}
            >
              {one === 'day' ? 'Days' : one === 'week' ? 'Weeks' : 'Months'}
            </button>
          ))}
        </fieldset>
        <button type="button" className="btn btn-line btn-small" onClick={toToday}>
          To today
        </button>
      </div>
      <p className="vh" id={saysId}>
        {drawnWords(laidOut, stages, record, reader)}
      </p>
      <div className="drawn-two">
        <div className="floor drawn-floor">
          {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset */}
          <div
            ref={region}
            className="drawn"
            role="group"
            aria-label="Build order along the days"
            aria-describedby={saysId}
            onKeyDown={onKeyDown}
          >
            <div className="drawn-wall" style={sizes}>
              <div className="drawn-corner" />
              <WallHead wall={wall} place={reader} />
              <div className="drawn-names" aria-hidden="true">
                {wall.lanes.map(({ party, height }) => (
                  <div key={party} style={{ height: rem(height) }}>
                    <b>{partyName(party, record)}</b>
                  </div>
                ))}
              </div>
              <div className="drawn-days" style={{ height: rem(wall.height) }}>
                {wall.lanes.map(({ party, top }) => (
                  <i key={party} className="drawn-lane" style={{ top: rem(top) }} />
                ))}
                <i className="drawn-today" style={{ left: rem(wall.today) }} />
                <WallStrings wall={wall} run={laidOut.run} links={links} at={open ?? at} />
                {wall.lanes.map(({ party, tiles }) => (
                  // biome-ignore lint/a11y/useSemanticElements: a lane is no fieldset
                  <div key={party} role="group" aria-label={partyName(party, record)}>
                    {tiles.map((tile) => (
                      <TileButton
                        key={tile.id}
                        tile={tile}
                        state={stateOf(tile.stage)}
                        says={says(tile.stage)}
                        isAt={tile.id === tabbed}
                        isOpen={tile.id === open}
                        onPress={press}
                        onFocus={focus}
                      />
                    ))}
                  </div>
                ))}
              </div>
            </div>
          </div>
          <p className="row small drawn-key">
            {shown.map((state) => (
              <span key={state}>
                <Mark name={markOf(state)} /> {stateLabel(state)}
              </span>
            ))}
            <span>
              <Mark name="run" /> Critical run
            </span>
            <span>
              <i className="drawn-key-today" /> Today
            </span>
            <span>
              <i className="drawn-key-cure" /> Cure, by the clock
            </span>
          </p>
        </div>
        {opened !== undefined && (
          <StageDetail
            stage={opened.stage}
            laid={opened.laid}
            state={stateOf(opened.stage)}
            onClose={() => {
              setOpen(null)
              goTo(opened.id)
            }}
          />
        )}
      </div>
      <p className="small soft desk">
        Enter tells more of a stage. ← and → follow the links, ↑ and ↓ the lanes; + and − bring it
        nearer and further, T goes to today.
      </p>
    </section>
  )
}
