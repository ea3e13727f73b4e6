import type { Metadata } from 'next'
import { AskForm } from './ask-form.tsx'

export const metadata: Metadata = { title: 'Ask for a decision · Fettleyard' }

export default function NewDecisionPage() {
  return <AskForm />
}
