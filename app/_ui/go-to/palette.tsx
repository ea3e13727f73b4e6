'use client'
import { useRouter } from 'next/navigation'
import { useMemo, useState } from 'react'
import {
  Autocomplete,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  SearchField,
  Text,
} from 'react-aria-components'
import { nearest, recentFirst } from './nearest.ts'
import { showNonce } from './own-nonce.ts'
import { recentPaths } from './recent.ts'
import { SheetOver } from './sheet-over.tsx'
import { usePlaces } from './use-places.ts'

showNonce()

/** The way to everywhere: type a number or a name, Enter goes there. It goes only; what is pressed is pressed there. */
export function Palette({
  onClose,
  onKeys,
}: {
  readonly onClose: () => void
  readonly onKeys: () => void
}) {
  const router = useRouter()
  const places = usePlaces()
  const [typed, setTyped] = useState('')
  const inOrder = useMemo(() => recentFirst(places, recentPaths()), [places])
  const shown = useMemo(
    () => nearest(inOrder, typed).map((place) => ({ ...place, id: `${place.path} ${place.name}` })),
    [inOrder, typed],
  )
  return (
    <SheetOver title="Go to" onClose={onClose}>
      <Autocomplete inputValue={typed} onInputChange={setTyped}>
        <SearchField className="field" autoFocus>
          <Label>A stage’s number, or a name</Label>
          <Input placeholder="41, engine, windscreen, journal" />
        </SearchField>
        <ListBox
          className="places"
          aria-label="Places"
          items={shown}
          renderEmptyState={() => (
            <p className="small">
              Nothing by that name in what this screen holds. Another car’s things are here once you
              opened it.
            </p>
          )}
          onAction={(key) => {
            const place = shown.find(({ id }) => id === key)
            if (place === undefined) return
            onClose()
            router.push(place.path)
          }}
        >
          {(place) => (
            <ListBoxItem id={place.id} textValue={place.name} className="place">
              <Text slot="label">
                <PlaceName name={place.name} />
              </Text>
              <Text slot="description" className="small">
                {place.under}
              </Text>
            </ListBoxItem>
          )}
        </ListBox>
      </Autocomplete>
      <p className="small">
        Arrows choose, Enter goes, Escape stays here.{' '}
        <button type="button" className="toast-away" onClick={onKeys}>
          All keys
        </button>
      </p>
    </SheetOver>
  )
}

/** A stage by its number, stencilled as on its card; all else by name. */
function PlaceName({ name }: { readonly name: string }) {
  const [number, ...rest] = name.split(' · ')
  if (rest.length === 0 || number === undefined || !/^\d+$/.test(number)) return name
  return (
    <>
      <b className="num">{number}</b>
      <span className="vh"> · </span>
      {rest.join(' · ')}
    </>
  )
}
