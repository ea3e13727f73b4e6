'use client'
import { CreepRule } from '@/app/p/[project]/change-orders/[order]/creep-rule.tsx'
import { OrderSlip } from '@/app/p/[project]/change-orders/[order]/order-slip.tsx'
import { ReceiptSlip } from '@/app/p/[project]/handovers/receipt-slip.tsx'
import { StillProject, useProject } from '@/lib/live/project-provider.tsx'
import { asOwner } from './sample.ts'

/** A change order before its answer and after it, a receipt, and the rule of what was added. */
export function Leaves() {
  return (
    <StillProject view={asOwner}>
      <div className="stack">
        <Order id="cho_mounts" />
        <Order id="cho_liners" />
      </div>
      <div className="stack">
        <Receipt />
        <div className="sheet">
          <CreepRule
            steps={[180, 230, 610]}
            before={930}
            after={1030}
            says="10.3 per cent over the first estimate; it was 9.3 per cent."
          />
        </div>
      </div>
    </StillProject>
  )
}

function Order({ id }: { readonly id: string }) {
  const order = useProject().record.changeOrders.rows.get(id)
  return order === undefined ? null : <OrderSlip order={order} />
}

function Receipt() {
  const { record, reader } = useProject()
  const handover = record.handovers.rows.get('hnd_gearbox')
  return handover === undefined ? null : <ReceiptSlip {...{ handover, record, reader }} />
}
