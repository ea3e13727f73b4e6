'use client'
import { useSyncExternalStore } from 'react'

const never = () => () => {}

/** The address that people come in by: commands from any other are turned away, so it is the yard's public one. Empty on the server. */
export const useOrigin = (): string =>
  useSyncExternalStore(
    never,
    () => location.origin,
    () => '',
  )
