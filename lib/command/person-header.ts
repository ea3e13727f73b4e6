/**
 * Names whose press a command is. On a shop's phone it is who works there; where somebody else is signed in by now, the server answers 401 and reads no further: what one
 * hand pressed without signal never goes out under the next one's name.
 */
export const PERSON_HEADER = 'fettleyard-person'

/** On a shop's phone, with a signature: the hand's own code. It goes with that press only; no queue and no record keeps it. */
export const CODE_HEADER = 'fettleyard-code'
