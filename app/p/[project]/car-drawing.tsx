import type { Assembly } from '@/lib/record/entities/things.ts'

/** A part of the drawing, and the words by which an assembly's name is known to be it. */
interface Piece {
  readonly words: readonly string[]
  readonly paths: readonly string[]
}

const WHEEL_FRONT =
  'M128 202a42 42 0 1 0 84 0a42 42 0 1 0-84 0M161 202a9 9 0 1 0 18 0a9 9 0 1 0-18 0'
const WHEEL_REAR =
  'M538 202a42 42 0 1 0 84 0a42 42 0 1 0-84 0M571 202a9 9 0 1 0 18 0a9 9 0 1 0-18 0'

/** A saloon from the side, nose to the left. Only what is drawn by itself is told apart; the words below say all of it. */
const pieces: readonly Piece[] = [
  { words: ['bonnet'], paths: ['M304 124 118 136c-14 3-22 12-26 26'] },
  { words: ['wing'], paths: ['M88 196q-2-34 22-52M104 200a66 66 0 0 1 132 0h60'] },
  { words: ['engine'], paths: ['M196 140h92v48h-92zM210 140v-12h20v12M248 140v-12h20v12'] },
  { words: ['windscreen', 'glass'], paths: ['M350 118 388 58'] },
  { words: ['door'], paths: ['M404 122v74h98v-74z', 'M482 138h14'] },
  { words: ['seat'], paths: ['M446 190c-4-26 2-44 14-46 10 4 12 24 8 46z'] },
  { words: ['bumper', 'brightwork'], paths: ['M60 206h24v-18H60z', 'M716 206h24v-18h-24z'] },
]
const SHELL =
  'M304 205v-83l46-4 38-60q6-8 18-8h150q14 0 22 10l42 58 60 12q24 6 26 34v41h-74a66 66 0 0 0-132 0zM400 66v52M404 118h150l-26-44q-4-6-12-6H414'

/** The car from the side: what is on it is drawn solid, what is off it dashed. */
export function CarDrawing({ assemblies }: { readonly assemblies: readonly Assembly[] }) {
  const drawn = pieces.flatMap((piece) => {
    const assembly = assemblies.find(({ name }) =>
      piece.words.some((word) => name.toLowerCase().includes(word)),
    )
    return assembly === undefined ? [] : [{ piece, assembly, off: assembly.host === null }]
  })
  const off = drawn.filter((one) => one.off).map(({ assembly }) => assembly.name)
  const sentence =
    off.length === 0
      ? 'The car from the side, drawn solid: nothing that is drawn is off it.'
      : `The car from the side. Dashed, because off the car: ${off.join(', ')}.`
  return (
    <figure>
      <svg className="car" viewBox="0 0 760 256" role="img" aria-label={sentence}>
        <path d="M10 246h740" />
        <path className="on" d={SHELL} />
        <path className="on" d="M84 196h232v13H84z" />
        <path d={WHEEL_FRONT} />
        <path d={WHEEL_REAR} />
        {drawn.flatMap(({ piece, off: isOff }) =>
          piece.paths.map((path) => <path key={path} className={isOff ? 'off' : ''} d={path} />),
        )}
      </svg>
      <figcaption className="small soft">
        Solid lines are on the car; dashed ones are off it.
      </figcaption>
    </figure>
  )
}
