'use client'
import { useId, useState } from 'react'
import { Mark } from '@/app/_ui/mark.tsx'
import { fileAddress } from '@/app/_ui/photos.tsx'
import { filesFolder } from '@/lib/live/files/files-folder.ts'
import { useProjectIfAny } from '@/lib/live/project-provider.tsx'
import { ChosenFile } from './chosen-file.tsx'
import { FieldSays } from './field-says.tsx'
import { TickField } from './text-field.tsx'
import { useChoose } from './use-choose.ts'
import { type ListChange, useFieldFiles } from './use-field-files.ts'

/**
 * Photos and papers that go with a press: taken or chosen, made small and upright, kept on this phone until the server has them. Those
 * of a press that wasn't done are there again after a reload; `letGoOfField(use)` ends that.
 */
export function PhotoField({
  project,
  folder,
  use,
  label,
  files,
  onChange,
}: {
  readonly project: string
  /** Where they are sent, if not to the project's own folder. */
  readonly folder?: string
  /** The press they belong to, such as `check chk_…`: one name for each form on this phone. */
  readonly use: string
  readonly label: string
  readonly files: readonly string[]
  readonly onChange: (change: ListChange) => void
}) {
  const id = useId()
  const person = useProjectIfAny()?.reader.person ?? null
  const to = folder ?? filesFolder(project)
  const held = useFieldFiles({ use, person, folder: to, files }, onChange)
  const choosing = useChoose({ folder: to, person, use }, onChange)
  const [keepPlace, setKeepPlace] = useState(false)
  const [undo, setUndo] = useState<{ readonly n: number; readonly press: () => void } | null>(null)

  const shown = files.map((sha256) => ({
    sha256,
    onPhone: held.shelf.find((file) => file.sha256 === sha256),
  }))
  const choose = (input: HTMLInputElement) => {
    const chosen = [...(input.files ?? [])]
    input.value = ''
    setUndo(null)
    void choosing.choose(chosen, keepPlace)
  }

  return (
    <fieldset className="picks stack tight photo-field">
      <legend>{label}</legend>
      <div className="pair">
        <label className="btn btn-line btn-file">
          <Mark name="camera" /> Take a photo
          <input
            type="file"
            accept="image/*"
            capture="environment"
            aria-describedby={`${id}-says`}
            onChange={(event) => choose(event.target)}
          />
        </label>
        <label className="btn btn-line btn-file">
          Choose photos
          <input
            type="file"
            multiple
            accept="image/jpeg,image/png,image/webp,application/pdf"
            aria-describedby={`${id}-says`}
            onChange={(event) => choose(event.target)}
          />
        </label>
      </div>
      <TickField
        label="Keep in each photo where it was taken"
        checked={keepPlace}
        onChange={setKeepPlace}
      />
      <FieldSays id={`${id}-says`} held={held} choosing={choosing} />
      {undo !== null && (
        <div className="row">
          <p>Photo {undo.n} is left out.</p>
          <button
            type="button"
            className="btn btn-line btn-small"
            onClick={() => {
              undo.press()
              setUndo(null)
            }}
          >
            Put it back
          </button>
        </div>
      )}
      {shown.length > 0 && (
        <ul className="pics">
          {shown.map(({ sha256, onPhone }, n) => (
            <ChosenFile
              key={sha256}
              caption={`${label}, ${n + 1}`}
              address={fileAddress(project, sha256, folder)}
              isThere={onPhone === undefined && held.readFor.includes(sha256)}
              onPhone={onPhone}
              sent={onPhone === undefined ? undefined : held.progress.get(onPhone.address)}
              goes={held.waitsFor === null}
              number={n + 1}
              onLeaveOut={() => setUndo({ n: n + 1, press: held.leaveOut(sha256) })}
            />
          ))}
        </ul>
      )}
    </fieldset>
  )
}
