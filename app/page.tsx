import { forPages } from '@/lib/server/for-pages.ts'

export default function FirstPage() {
  return (
    <main className="page stack">
      <header className="plate">
        <h1>Fettleyard</h1>
      </header>
      <section className="card stack">
        <p className="big">One car, several shops, one record.</p>
        <p>
          Who has the engine, what may start, what keeps it from starting and who can clear that:
          the shops and the owner of one car read it here, each from their own phone.
        </p>
        <p className="small soft">Version {forPages().version}</p>
      </section>
    </main>
  )
}
