/** A reason not to start that a person can act on: shown as it is, without a stack. */
export class Stop extends Error {}
