import { Mark } from '@/app/_ui/mark.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import type { Sum } from '@/lib/sums/sum.ts'
import type { Worked } from '@/lib/sums/typed.ts'
import { figureSaid } from './worked-sum.ts'

/** What a sum comes to, as it is typed: figures, verdict, working; or what is still to type. */
export function SumResult({
  worked,
  entered,
  by,
  decimal,
}: {
  readonly worked: Worked
  readonly entered: readonly string[]
  /** By whom and when, for the paper. */
  readonly by: string
  readonly decimal: '.' | ','
}) {
  const { result, toType, wrong } = worked
  return (
    <section className="sheet stack" id="comes-to">
      <Head title="Comes to" />
      {result === null && (
        <div className="stack tight">
          {wrong.length > 0 && (
            <p>
              <b>Not worked yet:</b> see what is marked above.
            </p>
          )}
          {toType.length > 0 && (
            <p>
              <b>Still to type:</b> {toType.join(' · ')}
            </p>
          )}
        </div>
      )}
      {result !== null && (
        <>
          <dl className="sum-figures">
            {result.figures.map((figure) => (
              <div key={figure.name}>
                <dt>{figure.label}</dt>
                <dd>{figureSaid(figure, decimal)}</dd>
              </div>
            ))}
          </dl>
          {result.verdict !== null && (
            <p className={result.verdict.passes ? 'verdict' : 'verdict verdict-out'}>
              <Mark name={result.verdict.passes ? 'met' : 'refused'} />
              <span>{result.verdict.words}</span>
            </p>
          )}
          {result.warnings.length > 0 && (
            <ul className="sum-warns">
              {result.warnings.map((warning) => (
                <li key={warning}>{warning}</li>
              ))}
            </ul>
          )}
          {result.working.length > 0 && (
            <div>
              <h3>The working</h3>
              <ul className="sum-lines">
                {result.working.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </div>
          )}
          <div className="paper-only">
            <h3>As entered</h3>
            <ul>
              {entered.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
            <p>Worked {by}.</p>
          </div>
        </>
      )}
      <output className="sr-only">
        {result === null
          ? ''
          : result.figures.map((each) => `${each.label} ${figureSaid(each, decimal)}`).join(', ')}
      </output>
    </section>
  )
}

/** How a sum is worked and what that rests on. */
export function AboutSum({ sum }: { readonly sum: Sum }) {
  return (
    <section className="sheet stack tight">
      <Head title="How it is worked" />
      <p>{sum.formula}</p>
      <p className="small">
        <b>Source:</b> {sum.source}
      </p>
      <p className="small">
        <b>How near:</b> {sum.tolerance}
      </p>
      <p className="small">
        The maker’s data sheet, the maker’s own figure and local law come before every rule of thumb
        here. A sum signs nothing off.
      </p>
    </section>
  )
}
