import type { Page } from '@playwright/test'
import { exifBlock, type PhotoFacts } from '../../lib/live/photo/exif-block.ts'
import { withSaid } from '../../lib/live/photo/jpeg-segments.ts'

/** A colour in each corner, clockwise from the top left, so that it shows how a picture lies. */
const CORNERS = ['#d02020', '#20a040', '#2040d0', '#e0c020'] as const

const nothing: PhotoFacts = { takenAt: null, offset: null, place: null, orientation: 1 }

/**
 * A photo as a camera with `orientation` writes it, upright `width` by `height` with the corners red, green, blue, yellow: drawn by the
 * browser of the test, with a grain that takes room.
 */
export async function aPhoto(
  page: Page,
  {
    width = 3000,
    height = 4000,
    ...facts
  }: Partial<PhotoFacts> & { width?: number; height?: number },
): Promise<Buffer> {
  const said = { ...nothing, ...facts }
  const drawn = await page.evaluate(
    async ({ w, h, corners, orientation }) => {
      const upright = new OffscreenCanvas(w, h)
      const pen = upright.getContext('2d')
      if (pen === null) throw new Error('no canvas')
      for (const [n, colour] of corners.entries()) {
        pen.fillStyle = colour
        pen.fillRect(n === 1 || n === 2 ? w / 2 : 0, n >= 2 ? h / 2 : 0, w / 2, h / 2)
      }
      for (let n = 0; n < (w * h) / 400; n++) {
        pen.fillStyle = `rgb(0 0 0 / ${Math.random() * 0.3})`
        pen.fillRect(Math.random() * w, Math.random() * h, 6, 6)
      }
      // What the sensor saw: turned so that the orientation turns it back (CIPA DC-008, 4.6.5.1.6).
      const lies = orientation >= 5
      const sensor = new OffscreenCanvas(lies ? h : w, lies ? w : h)
      const out = sensor.getContext('2d')
      if (out === null) throw new Error('no canvas')
      const turns: {
        readonly [way: number]: readonly [number, number, number, number, number, number]
      } = {
        1: [1, 0, 0, 1, 0, 0],
        2: [-1, 0, 0, 1, w, 0],
        3: [-1, 0, 0, -1, w, h],
        4: [1, 0, 0, -1, 0, h],
        5: [0, 1, 1, 0, 0, 0],
        6: [0, -1, 1, 0, 0, w],
        7: [0, -1, -1, 0, h, w],
        8: [0, 1, -1, 0, h, 0],
      }
      out.setTransform(...(turns[orientation] ?? [1, 0, 0, 1, 0, 0]))
      out.drawImage(upright, 0, 0)
      const blob = await sensor.convertToBlob({ type: 'image/jpeg', quality: 0.95 })
      const bytes = new Uint8Array(await blob.arrayBuffer())
      let text = ''
      for (let at = 0; at < bytes.length; at += 8192)
        text += String.fromCharCode(...bytes.subarray(at, at + 8192))
      return btoa(text)
    },
    { w: width, h: height, corners: CORNERS, orientation: said.orientation },
  )
  const jpeg = withSaid(new Uint8Array(Buffer.from(drawn, 'base64')), exifBlock(said))
  if (jpeg === null) throw new Error('The browser drew no JPEG.')
  return Buffer.from(jpeg)
}

/** How a kept picture lies, as its bytes are, whatever they say of turning it: its size, and the colour nearest to each corner. */
export const liesSo = (page: Page, address: string) =>
  page.evaluate(
    async ({ path, corners }) => {
      const blob = await (await fetch(path)).blob()
      const picture = await createImageBitmap(blob, { imageOrientation: 'none' })
      const { width, height } = picture
      const canvas = new OffscreenCanvas(width, height)
      const pen = canvas.getContext('2d')
      if (pen === null) throw new Error('no canvas')
      pen.drawImage(picture, 0, 0)
      const names = ['red', 'green', 'blue', 'yellow']
      const near = (x: number, y: number) => {
        // The mean of a patch: the grain is left out of it.
        const { data } = pen.getImageData(x - 20, y - 20, 40, 40)
        const mean = [0, 1, 2].map((part) => {
          let sum = 0
          for (let at = part; at < data.length; at += 4) sum += data[at] ?? 0
          return sum / (data.length / 4)
        })
        const far = corners.map((colour) =>
          [1, 3, 5].reduce(
            (sum, at, n) =>
              sum + (Number.parseInt(colour.slice(at, at + 2), 16) - (mean[n] ?? 0)) ** 2,
            0,
          ),
        )
        return names[far.indexOf(Math.min(...far))]
      }
      const [l, r, t, b] = [width / 8, (width * 7) / 8, height / 8, (height * 7) / 8]
      return {
        width,
        height,
        bytes: blob.size,
        corners: [near(l, t), near(r, t), near(r, b), near(l, b)],
      }
    },
    { path: address, corners: CORNERS },
  )
