import './customer.css'
import type { ReactElement } from 'react'
import { drawnVariantId } from '../../domain/layout/edit/changeVariants'
import { useApp } from '../../state/react'
import { ScreenFrame } from '../ScreenFrame'
import { CustomerView } from './CustomerView'
import { ShowForm } from './ShowForm'
import { TakeAnswer } from './TakeAnswer'
import { TalkHistory } from './TalkHistory'
import { useShopTalk } from './useShopTalk'

/** To talk a proposal over with the customer at the builder's own tablet, to send it, and to take what comes back. */
export const CustomerScreen = (): ReactElement => {
  const talk = useShopTalk()
  const documentId = useApp((state) => state.documentId)
  const drawnId = useApp((state) => drawnVariantId(state.layout))
  return (
    <ScreenFrame title="Customer">
      <div className="customer-screen">
        <TalkHistory />
        <TakeAnswer />
        <ShowForm shown={talk.shown} />
        <hr />
        <CustomerView key={documentId} talk={talk} firstId={drawnId} />
      </div>
    </ScreenFrame>
  )
}
