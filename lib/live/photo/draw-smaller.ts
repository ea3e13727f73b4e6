/** A canvas of a worker, or, where there is none, of the page. */
type AnyCanvas = OffscreenCanvas | HTMLCanvasElement

function aCanvas(width: number, height: number): AnyCanvas {
  if (typeof OffscreenCanvas !== 'undefined') return new OffscreenCanvas(width, height)
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  return canvas
}

const jpegOf = (canvas: AnyCanvas, quality: number): Promise<Blob> =>
  'convertToBlob' in canvas
    ? canvas.convertToBlob({ type: 'image/jpeg', quality })
    : new Promise((done, fail) =>
        canvas.toBlob(
          (blob) =>
            blob === null ? fail(new Error('This picture is too large to draw.')) : done(blob),
          'image/jpeg',
          quality,
        ),
      )

/** The picture as a JPEG whose longer side has at most that many pixels; never enlarged. */
export async function drawSmaller(
  picture: ImageBitmap,
  longest: number,
  quality: number,
): Promise<Blob> {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height))
  const width = Math.max(1, Math.round(picture.width * scale))
  const height = Math.max(1, Math.round(picture.height * scale))
  const canvas = aCanvas(width, height)
  const pen = canvas.getContext('2d')
  if (pen === null || !('drawImage' in pen)) throw new Error('This browser can’t draw.')
  // A JPEG can't be seen through: what shows nothing is paper.
  pen.fillStyle = '#fff'
  pen.fillRect(0, 0, width, height)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(picture, 0, 0, width, height)
  return jpegOf(canvas, quality)
}
