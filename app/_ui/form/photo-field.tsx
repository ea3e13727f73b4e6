'use client'
import { useId, useState } from 'react'
import { fileAddress } from '@/app/_ui/photos.tsx'
import { uploadFile } from './upload-file.ts'

/** Photos and sheets that go with a press: taken or chosen, sent at once, named by their hash. */
export function PhotoField({
  project,
  folder,
  label,
  files,
  onChange,
}: {
  readonly project: string
  /** Where they are sent, if not to the project's own folder. */
  readonly folder?: string
  readonly label: string
  readonly files: readonly string[]
  /** Told how the list changes, not what it becomes: another photo may have arrived while this one was on its way. */
  readonly onChange: (change: (files: readonly string[]) => readonly string[]) => void
}) {
  const id = useId()
  const [waiting, setWaiting] = useState(0)
  const [wrong, setWrong] = useState<readonly string[]>([])
  const [pictures, setPictures] = useState<ReadonlyMap<string, string>>(new Map())
  const to = folder ?? `/api/projects/${project}/files`

  const send = async (chosen: readonly File[]) => {
    setWaiting((left) => left + chosen.length)
    const sent: string[] = []
    const faults: string[] = []
    for (const file of chosen) {
      const answer = await uploadFile(to, file)
      if (answer.ok) {
        sent.push(answer.sha256)
        // Shown from the phone: until the press names it, not everybody who sends it may fetch it.
        const address = URL.createObjectURL(file)
        setPictures((known) => new Map(known).set(answer.sha256, address))
      } else faults.push(answer.message)
      setWaiting((left) => left - 1)
    }
    setWrong(faults)
    onChange((there) => [...new Set([...there, ...sent])])
  }

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="file"
        multiple
        accept="image/jpeg,image/png,image/webp,application/pdf"
        aria-describedby={`${id}-says`}
        onChange={(event) => {
          const chosen = [...(event.target.files ?? [])]
          event.target.value = ''
          void send(chosen)
        }}
      />
      <div id={`${id}-says`} aria-live="polite">
        {waiting > 0 && <p className="hint">Sending, {waiting} to go…</p>}
        {wrong.map((message) => (
          <p key={message} className="wrong">
            {message}
          </p>
        ))}
      </div>
      {files.length > 0 && (
        <ul className="pics">
          {files.map((file, n) => (
            <li key={file} className="stack tight">
              <a href={pictures.get(file) ?? fileAddress(project, file, folder)} className="photo">
                {/* biome-ignore lint/performance/noImgElement: our own server gives the file as it is, and only to who may see it */}
                <img
                  src={pictures.get(file) ?? fileAddress(project, file, folder)}
                  alt={`${label}, ${n + 1}`}
                />
              </a>
              <button
                type="button"
                className="btn btn-line"
                onClick={() => onChange((there) => there.filter((other) => other !== file))}
              >
                Leave {n + 1} out
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
