'use client'
import { Outcome } from './outcome.tsx'
import { PressButton, type PressOf } from './press-button.tsx'

/** A button that gives one command as it stands; a refusal stands under it, with its conditions and their presses. */
export const CommandButton = (press: PressOf) => <PressButton {...press} outcome={Outcome} />
