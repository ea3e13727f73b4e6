import { hash } from 'node:crypto'

/** The machine's own SHA-256 of a text, for what the lane hashes three times a command; the same as `sha256Hex` of the record. */
export const sha256 = (text: string): string => hash('sha256', text, 'hex')
