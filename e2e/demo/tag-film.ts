import { writeFileSync } from 'node:fs'
import { encodeQR } from 'qr'

const WIDTH = 640
const HEIGHT = 480
/** Side of a module, in px. */
const MODULE = 8
/** Grey of a workbench, luma. */
const BENCH = 120
const PAPER = 235
const INK = 20
const FRAMES = 4

/** One luma plane: the text's QR code on white paper in the middle of a bench; the bare bench for none. */
function frame(text: string | null): Buffer {
  const luma = Buffer.alloc(WIDTH * HEIGHT, BENCH)
  if (text === null) return luma
  const rows = encodeQR(text, 'raw', { border: 4 })
  const left = Math.floor((WIDTH - rows.length * MODULE) / 2)
  const top = Math.floor((HEIGHT - rows.length * MODULE) / 2)
  for (const [y, row] of rows.entries()) {
    for (let line = 0; line < MODULE; line++) {
      for (const [x, dark] of row.entries()) {
        const at = (top + y * MODULE + line) * WIDTH + left + x * MODULE
        luma.fill(dark ? INK : PAPER, at, at + MODULE)
      }
    }
  }
  return luma
}

/** Writes what a camera sees over a short while, as an uncompressed film (YUV4MPEG2) that Chromium plays in a camera's place. */
export function writeFilm(file: string, text: string | null): void {
  const colour = Buffer.alloc((WIDTH * HEIGHT) / 2, 128)
  const picture = Buffer.concat([Buffer.from('FRAME\n'), frame(text), colour])
  writeFileSync(
    file,
    Buffer.concat([
      Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`),
      ...Array.from({ length: FRAMES }, () => picture),
    ]),
  )
}
