'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { PhotoField } from '@/app/_ui/form/photo-field.tsx'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { KeptSheet } from '@/app/_ui/press/kept-sheet.tsx'
import { letGoOfField } from '@/lib/live/files/keep-file.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { sumOf } from '@/lib/money/sum.ts'
import { linesOf } from '@/lib/money/totals.ts'
import { ChangeOrder } from '@/lib/record/entities/money.ts'
import { label } from '@/lib/words/labels.ts'
import { blankLine, draftOf, isBlank, type LineDraft, lineJson, readLine } from './lines-draft.ts'
import { LinesField } from './lines-field.tsx'
import { bearers, reasons } from './order-words.ts'
import { useMoneyView } from './use-money-view.ts'

const choices = <K extends string>(words: { readonly [key in K]: string }) =>
  Object.entries<string>(words).map(([value, text]) => ({ value, label: text }))

/** Raises a change order as a draft, or revises one: what, why, who bears it, and its lines with tax. */
export function OrderForm({ order }: { readonly order: ChangeOrder | null }) {
  const { record, reader, standing, sum } = useMoneyView()
  const { shops } = useProject()
  const router = useRouter()
  const press = usePress(
    order === null ? 'changeOrder.raise' : 'changeOrder.revise',
    'Saved as a draft. Nobody else sees it yet as sent.',
    order === null ? undefined : { changeOrder: order.id },
  )
  const own = shops.find(({ id }) => id === record.parties.rows.get(standing.party)?.shop)
  const usualRate = own === undefined ? '' : String(own.taxRegistered ? own.taxRate / 100 : 0)
  const [kept, setKept] = useState(false)
  const [title, setTitle] = useState(order?.title ?? '')
  const [text, setText] = useState(order?.text ?? '')
  const [reason, setReason] = useState<string>(order?.reason ?? 'found')
  const [bears, setBears] = useState<string>(order?.bears ?? 'owner')
  const [days, setDays] = useState(order === null || order.days === null ? '' : String(order.days))
  const [files, setFiles] = useState<readonly string[]>(order?.files ?? [])
  const [lines, setLines] = useState<readonly LineDraft[]>(() => {
    const stand = order === null ? [] : linesOf(record, order.id)
    return stand.length === 0
      ? [blankLine(usualRate)]
      : stand.map((line) => draftOf(line, reader.currency))
  })
  const [pressed, setPressed] = useState(false)
  const use = `change order ${order?.id ?? record.id}`

  const typed = lines.filter((line) => !isBlank(line))
  const read = typed.map((line) => readLine(line, reader.currency))
  const ready = read.flatMap(({ line }) => (line === null ? [] : [line]))
  const total = sumOf(ready)
  const daysRead = days.trim() === '' ? null : Number(days.replace('−', '-'))
  const daysWrong =
    daysRead !== null && !Number.isInteger(daysRead)
      ? 'Whole working days, such as 3; empty where you can’t say.'
      : undefined
  const titleWrong = title.trim() === '' ? 'Give it a name, as on a job card.' : undefined

  const save = async () => {
    setPressed(true)
    if (titleWrong ?? daysWrong ?? (ready.length < typed.length ? 'lines' : undefined)) return
    const shared = {
      title: title.trim(),
      text,
      reason: ChangeOrder.shape.reason.parse(reason),
      bears: ChangeOrder.shape.bears.parse(bears),
      lines: ready.map(lineJson),
      files: [...files],
    }
    const known = new Set(record.changeOrders.rows.keys())
    if (order !== null) {
      if (!(await press.send({ changeOrder: order.id, ...shared, days: daysRead }))) return
      await letGoOfField(use)
      router.push(`/p/${record.id}/change-orders/${order.id}`)
      return
    }
    const outcome = await press.command.send({
      party: standing.party,
      ...shared,
      ...(daysRead === null ? {} : { days: daysRead }),
    })
    const through = outcome.status === 200 || outcome.status === 'kept'
    if (through) await letGoOfField(use)
    setKept(outcome.status === 'kept')
    if (outcome.status !== 200) return
    const raised = outcome.changed
      .flatMap(({ entities }) => entities)
      .find((entity) => entity.kind === 'changeOrder' && !known.has(entity.id))
    router.push(`/p/${record.id}/change-orders/${raised?.id ?? ''}`)
  }

  if (kept) return <KeptSheet href={`/p/${record.id}/change-orders`} label="All change orders" />
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void save()
      }}
    >
      <section className="sheet stack">
        <Head title={order === null ? 'A change order' : `Change order ${order.number}`} />
        <TextField
          label="What is it?"
          value={title}
          onChange={setTitle}
          wrong={pressed ? titleWrong : press.wrong('title')}
          placeholder="New engine mount brackets"
        />
        <TextField
          label="Why, and what was found"
          rows={4}
          value={text}
          onChange={setText}
          wrong={press.wrong('text')}
        />
        <SelectField
          label="Reason"
          value={reason}
          onChange={setReason}
          options={choices(reasons)}
        />
        <SelectField
          label="Who bears it?"
          value={bears}
          onChange={setBears}
          options={choices(bearers)}
          wrong={press.wrong('bears')}
          hint={
            bears === 'owner'
              ? undefined
              : 'It is still sent and answered, and adds nothing to the bill.'
          }
        />
        <TextField
          label="Working days it adds, as you see it"
          inputMode="numeric"
          value={days}
          onChange={setDays}
          wrong={pressed ? daysWrong : undefined}
        />
        <PhotoField
          project={record.id}
          use={use}
          label="Photos"
          files={files}
          onChange={setFiles}
        />
      </section>
      <section className="sheet stack">
        <Head title="Lines" note="before tax" />
        <LinesField
          lines={lines}
          onChange={setLines}
          faults={
            new Map(typed.map((line, n) => [line.key, pressed ? (read[n]?.faults ?? {}) : {}]))
          }
          onMore={() => setLines([...lines, blankLine(usualRate)])}
        />
        <table className="table">
          <tbody>
            <tr>
              <td>Before tax</td>
              <td className="r">{sum(total.net)}</td>
            </tr>
            <tr>
              <td>Tax</td>
              <td className="r">{sum(total.tax)}</td>
            </tr>
            <tr className="sum">
              <td>Tax included</td>
              <td className="r">{sum(total.gross)}</td>
            </tr>
          </tbody>
        </table>
        <PressFoot
          press={press}
          label={label(order === null ? 'changeOrder.raise' : 'changeOrder.revise')}
          note="It is a draft until you send it. After the yes nothing in it can be altered."
        />
      </section>
    </form>
  )
}
