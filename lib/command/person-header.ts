/**
 * Names whose press a command is. Where somebody else is signed in by now, the server answers 401 and reads no further: what one
 * hand pressed without signal never goes out under the next one's name.
 */
export const PERSON_HEADER = 'fettleyard-person'
