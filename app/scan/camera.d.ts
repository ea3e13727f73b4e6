// What browsers have and TypeScript's library of them lacks.

/** Image Capture (W3C): the lamp beside a phone's camera. */
interface MediaTrackConstraintSet {
  torch?: boolean
}
interface MediaTrackCapabilities {
  torch?: boolean
}

/** Barcode Detection (WICG), where the device brings it. */
interface Window {
  readonly BarcodeDetector?: {
    new (options: {
      readonly formats: readonly string[]
    }): {
      detect(source: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>
    }
    getSupportedFormats(): Promise<readonly string[]>
  }
}
