import { Card, Head, Notice, Plate, Sheet, Slip, Stamp, Tag } from '@/app/_ui/paper.tsx'
import { ToastFace } from '@/app/_ui/toast-face.tsx'

/** Plate, card, tag, sheet, slip, stamp, tape, toast, and what is ruled on paper. */
export function Papers() {
  return (
    <>
      <div className="stack">
        <Plate title="Averley Three-Litre" under="1961 · ivory over oxblood leather">
          You are <b>Bexwater Engines</b>
        </Plate>
        <Card number={85} title="A card is a stage" under="Tarn Lane Coachworks · about 7 h">
          <div className="row">
            <Tag>A tag is an assembly</Tag>
            <Tag>Bonnet</Tag>
          </div>
        </Card>
        <Card title="A card without a number" />
        <Notice mark="clock">
          <p>A notice is a strip of masking tape. One at a time.</p>
        </Notice>
        <Notice mark="refused" no>
          <p>
            <b>A refusal</b> is the same tape in red oxide.
          </p>
        </Notice>
        <ToastFace
          words={{ text: '41 is in work.', undo: { label: 'Take back', press: () => {} } }}
          onClose={() => {}}
        />
        <ToastFace
          words={{ text: 'It can’t be taken back from here.', mark: 'refused' }}
          onClose={() => {}}
        />
        <div className="sheet row">
          <Stamp
            word="Signed off"
            lines={['Jory Wenlock · Bexwater Engines', '11 Feb 2027 · 09:14']}
          />
          <Stamp word="Refused" lines={['Received by nobody']} no />
        </div>
      </div>
      <div className="stack">
        <Slip>
          <h3>A slip can’t be altered</h3>
          <p>Change orders, receipts, invoices.</p>
        </Slip>
        <Sheet title="Ruled" note="3">
          <ul className="ruled">
            <li className="rowend">
              <span>
                <b>39</b> · Mounts fitted to engine
              </span>
              <span>since Tue 2 Feb</span>
            </li>
            <li className="rowend">
              <span>
                <b>80</b> · Engine and gearbox in
              </span>
              <span>No day</span>
            </li>
          </ul>
          <table className="table">
            <thead>
              <tr>
                <th>What</th>
                <th className="r">Price</th>
                <th className="r">Tax 20 %</th>
              </tr>
            </thead>
            <tbody>
              <tr>
                <td>Pattern and castings, a pair</td>
                <td className="r">£340.00</td>
                <td className="r">£68.00</td>
              </tr>
              <tr>
                <td>
                  <b>Less:</b> mending the old pair
                </td>
                <td className="r">−£95.00</td>
                <td className="r">−£19.00</td>
              </tr>
              <tr className="sum">
                <td>This change order</td>
                <td className="r">£245.00</td>
                <td className="r">£49.00</td>
              </tr>
            </tbody>
          </table>
          <dl className="facts">
            <dt>Ordered</dt>
            <dd>Tue 2 Feb</dd>
            <dt>Promised</dt>
            <dd>Fri 12 Feb, second promise</dd>
          </dl>
          <ol className="string">
            <li className="root">
              <h3>Root</h3>
            </li>
            <li>
              <h3>Next</h3>
            </li>
            <li className="loose">
              <h3>Not agreed yet</h3>
            </li>
            <li className="past">
              <h3>Past</h3>
            </li>
          </ol>
          <div className="shim">Conceded: a dashed frame that stays on the card.</div>
          <details>
            <summary>3 more checks</summary>
            <p>All passed.</p>
          </details>
          <details open>
            <summary>A fold that is open</summary>
            <p>What lay in it.</p>
          </details>
        </Sheet>
        <Head title="A head" note="2" />
      </div>
    </>
  )
}
