/**
 * What a shop's phone must ask before a press is decided: who works there (nobody said, or they left the shop), the hand's own
 * code (none came, or a wrong one), a first code (this hand has none yet); or why it can't be done there at all.
 */
export type DeviceNeeds = 'hand' | 'code' | 'right code' | 'first code' | 'own session'
