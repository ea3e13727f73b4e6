'use client'
import type { ReactNode } from 'react'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'

/** A sheet over the screen that takes the focus and gives it back; Escape or a press beside it puts it away. */
export function SheetOver({
  title,
  onClose,
  children,
}: {
  readonly title: string
  readonly onClose: () => void
  readonly children: ReactNode
}) {
  return (
    <ModalOverlay
      className="over"
      isOpen
      isDismissable
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose()
      }}
    >
      <Modal className="over-sheet">
        <Dialog className="stack tight over-dialog">
          <div className="row spread">
            <Heading slot="title" className="over-title">
              {title}
            </Heading>
            <button type="button" className="toast-away" onClick={onClose}>
              Close
            </button>
          </div>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
