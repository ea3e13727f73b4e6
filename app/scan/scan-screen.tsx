'use client'
import { useRouter } from 'next/navigation'
import { useCallback, useEffect, useRef, useState } from 'react'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { Head, Notice } from '@/app/_ui/paper.tsx'
import { buzz } from '@/app/_ui/phone/buzz.ts'
import { readScanned, readTagCode, tagPath } from '@/lib/custody/tag-code.ts'
import { foundWords, scannedWords, typedWrong } from './code-words.ts'
import { findAssembly } from './find-assembly.ts'
import { TagCamera } from './tag-camera.tsx'
import { useCamera } from './use-camera.ts'

/** What was found out, in words; `signIn`: where to go on from. */
interface Said {
  readonly text: string
  readonly no: boolean
  readonly link?: { readonly href: string; readonly label: string }
}

/** A tag is scanned or its code typed, and its assembly opens. `asked`: the code of the address, by a phone's own camera. */
export function ScanScreen({ asked }: { readonly asked: string | null }) {
  const router = useRouter()
  const [said, setSaid] = useState<Said | null>(null)
  const [typed, setTyped] = useState('')
  const [wrong, setWrong] = useState<string>()
  const [searching, setSearching] = useState(false)
  const last = useRef('')

  const lookUp = useCallback(
    async (code: string) => {
      setSearching(true)
      setSaid(null)
      const found = await findAssembly(code)
      setSearching(false)
      if (found.is === 'found') {
        buzz('found')
        setSaid({ text: 'Found. It opens.', no: false })
        router.push(found.path)
        return
      }
      buzz('amiss')
      // The same tag in the frame again may have an answer by now.
      last.current = ''
      setSaid({
        text: foundWords(code, found),
        no: true,
        ...(found.is === 'signed out'
          ? {
              link: {
                href: `/sign-in?next=${encodeURIComponent(tagPath(code))}`,
                label: 'Sign in',
              },
            }
          : {}),
      })
    },
    [router],
  )

  const camera = useCamera((text) => {
    if (text === last.current) return
    last.current = text
    const scanned = readScanned(text, location.origin)
    if (scanned.is === 'tag') {
      camera.close()
      void lookUp(scanned.code)
      return
    }
    buzz('amiss')
    setSaid({
      text: scannedWords(text, scanned),
      no: true,
      ...(scanned.is === 'page' ? { link: { href: scanned.path, label: 'Open that page' } } : {}),
    })
  })

  useEffect(() => {
    if (asked === null) return
    const read = readTagCode(asked)
    if (read.ok) void lookUp(read.code)
    else setSaid({ text: scannedWords(asked, { is: 'misread' }), no: true })
  }, [asked, lookUp])

  return (
    <div className="cols cols-2">
      <div className="stack">
        <div role="status">
          {searching && <Notice mark="scan">Looking it up…</Notice>}
          {said !== null && !said.no && <Notice mark="met">{said.text}</Notice>}
        </div>
        {said?.no === true && (
          <Notice mark="refused" no>
            <p>{said.text}</p>
            {said.link !== undefined && (
              <p>
                <a className="btn btn-line on-oxide" href={said.link.href}>
                  {said.link.label}
                </a>
              </p>
            )}
          </Notice>
        )}
        <TagCamera camera={camera} />
      </div>
      <form
        className="sheet stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          const read = readTagCode(typed)
          setWrong(typedWrong(read, typed))
          if (read.ok && !searching) void lookUp(read.code)
        }}
      >
        <Head title="Or type its code" />
        <TextField
          label="The code on the tag"
          value={typed}
          onChange={setTyped}
          wrong={wrong}
          hint="Eight figures and letters, such as R2RJ T39D. Small letters and spaces are fine; O is taken for 0."
        />
        <button type="submit" className="btn btn-line btn-wide" aria-busy={searching}>
          <Mark name="scan" /> {searching ? 'Looking it up…' : 'Open the assembly'}
        </button>
      </form>
    </div>
  )
}
