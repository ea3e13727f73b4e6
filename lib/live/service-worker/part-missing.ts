/** Whether a failure is that of a script or a style which could not be fetched: gone with a former version, or no signal. */
export function isPartMissing(error: unknown): boolean {
  return (
    error instanceof Error &&
    (error.name === 'ChunkLoadError' ||
      /load chunk|module script|imported module/i.test(error.message))
  )
}
