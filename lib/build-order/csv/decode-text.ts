const begins = (bytes: Uint8Array, ...mark: number[]): boolean =>
  mark.every((byte, i) => bytes[i] === byte)

/**
 * The text of a file as a spreadsheet saves it: by its byte order mark, else UTF-8 where the bytes are that, else
 * Windows-1252 (WHATWG Encoding §9, where every byte means something). The mark itself is left out.
 */
export function decodeText(bytes: Uint8Array): string {
  if (begins(bytes, 0xff, 0xfe)) return new TextDecoder('utf-16le').decode(bytes)
  if (begins(bytes, 0xfe, 0xff)) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
