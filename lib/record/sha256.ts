import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'

/** SHA-256 (FIPS 180-4) of a text's UTF-8 bytes, in lower-case hexadecimal; on phone and server alike. */
export const sha256Hex = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)))
