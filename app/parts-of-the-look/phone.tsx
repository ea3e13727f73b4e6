'use client'
import { useState } from 'react'
import { ChosenFile } from '@/app/_ui/form/chosen-file.tsx'
import { CodePad } from '@/app/_ui/form/code-pad.tsx'
import { NumberPad } from '@/app/_ui/form/number-pad.tsx'
import { LiveFace } from '@/app/_ui/live-face.tsx'
import { UnsentFace } from '@/app/_ui/unsent-face.tsx'
import { AssemblyTag } from '@/app/p/[project]/assemblies/[assembly]/assembly-tag.tsx'
import type { WaitingFile } from '@/lib/live/phone/phone-store.ts'
import { StillProject, useProject } from '@/lib/live/project-provider.tsx'
import { Instant, Sha256 } from '@/lib/record/scalars.ts'
import { State } from './both.tsx'
import { asLead } from './sample.ts'

const onPhone = (name: string, over: Partial<WaitingFile>): WaitingFile => ({
  address: `/api/projects/prj_sample/files/${name}`,
  sha256: Sha256.parse('0'.repeat(64)),
  folder: '/api/projects/prj_sample/files',
  person: null,
  name,
  bytes: new Blob(['a paper']),
  thumb: null,
  use: null,
  addedAt: Instant.parse('2027-02-11T09:31:00.000Z'),
  upload: null,
  no: null,
  ...over,
})
const FILES = [
  { file: onPhone('torque-sheet.pdf', {}), sent: undefined },
  { file: onPhone('run-in-notes.pdf', {}), sent: 0.6 },
  { file: onPhone('oil-label.pdf', { bytes: null }), sent: undefined },
  { file: onPhone('film.pdf', { no: 'It is larger than 25 MB.' }), sent: undefined },
] as const

/** What a phone in the workshop adds: keys for gloves, a code, what is unsent, files on their way, a tag as big as the screen. */
export function Phone() {
  const [figure, setFigure] = useState('3.9')
  const [code, setCode] = useState('47')
  return (
    <>
      <div className="stack">
        <div className="sheet stack">
          <State name={`Keys for a figure: ${figure}`}>
            <NumberPad label="Reading, bar" value={figure} onChange={setFigure} decimal="." minus />
          </State>
          <CodePad
            label="Your code"
            value={code}
            onChange={setCode}
            onEnter={() => {}}
            press="Sign as Sil Harker"
            least={4}
            most={8}
            wrong="This code isn’t Sil Harker’s. Nothing was signed."
          />
        </div>
        <Tags />
      </div>
      <div className="stack">
        <State name="Unsent, and the session is over">
          <LiveFace
            says="As of 09:31, no network"
            unsent={
              <UnsentFace
                waiting={5}
                refused={1}
                oldest="since 08:58"
                signIn={{ path: '#phone', words: 'Sign in again as Jory Wenlock: 5 presses wait' }}
              />
            }
            said={null}
          />
        </State>
        <State name="Refused on arrival">
          <UnsentFace waiting={0} refused={2} oldest="" />
        </State>
        <State name="A code is asked for first">
          <UnsentFace waiting={2} refused={0} oldest="since 09:20" signsFirst="Sil Harker" />
        </State>
        <ul className="sheet pics">
          {FILES.map(({ file, sent }, n) => (
            <ChosenFile
              key={file.name}
              caption={file.name}
              address="#phone"
              isThere={false}
              onPhone={file}
              sent={sent}
              goes
              number={n + 1}
              onLeaveOut={() => {}}
            />
          ))}
        </ul>
      </div>
    </>
  )
}

const Tags = () => (
  <StillProject view={asLead}>
    <BigTag />
  </StillProject>
)

function BigTag() {
  const assembly = useProject().record.assemblies.rows.get('asm_gearbox')
  return assembly === undefined ? null : <AssemblyTag assembly={assembly} />
}
