/** Reads a QR code in what the camera shows now; null where there is none. */
export type Eye = (video: HTMLVideoElement) => Promise<string | null>

const QR = 'qr_code'

/** Side of the square that is looked at, in px: a tag at arm's length still has three px a module. */
const SIDE = 520

/** The device's own reader where it has one, else ours, which is fetched now. @throws where it can't be fetched */
export async function openEye(): Promise<Eye> {
  const Detector = window.BarcodeDetector
  if (Detector !== undefined) {
    const formats = await Detector.getSupportedFormats().catch((): readonly string[] => [])
    if (formats.includes(QR)) {
      const detector = new Detector({ formats: [QR] })
      return async (video) => (await detector.detect(video))[0]?.rawValue ?? null
    }
  }
  return ours()
}

async function ours(): Promise<Eye> {
  const { default: decode } = await import('qr/decode.js')
  const canvas = document.createElement('canvas')
  canvas.width = SIDE
  canvas.height = SIDE
  const pencil = canvas.getContext('2d', { willReadFrequently: true })
  return async (video) => {
    const { videoWidth: width, videoHeight: height } = video
    if (pencil === null || width === 0 || height === 0) return null
    // The square in the middle: what the frame on the screen shows.
    const side = Math.min(width, height)
    pencil.drawImage(video, (width - side) / 2, (height - side) / 2, side, side, 0, 0, SIDE, SIDE)
    try {
      return decode(pencil.getImageData(0, 0, SIDE, SIDE))
    } catch {
      // Most frames hold no code; it says so by throwing.
      return null
    }
  }
}
