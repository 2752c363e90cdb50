import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { bringInDemo } from '../../lib/requests/demo.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

/** What a record that holds nothing yet offers. */
export function FirstVisit() {
  const [state, setState] = useState<'idle' | 'bringing' | { readonly fault: string }>('idle');
  const [, go] = useLocation();
  const bring = async () => {
    setState('bringing');
    const reply = await bringInDemo();
    if (reply.ok) go(hrefs.start());
    else setState({ fault: reply.fault.detail });
  };
  return (
    <>
      <p>{text.campaigns.empty}</p>
      <div className="first-visit">
        <div>
          <h3>{text.start.offer}</h3>
          <p className="soft">{text.start.offerWords}</p>
          <button
            type="button"
            className="press press-main"
            disabled={state === 'bringing'}
            onClick={() => void bring()}
          >
            {state === 'bringing' ? text.start.bringing : text.start.bringDemo}
          </button>
          {typeof state === 'object' ? (
            <p className="form-fault" role="alert">
              {state.fault}
            </p>
          ) : null}
        </div>
        <div>
          <h3>{text.start.begin}</h3>
          <p className="soft">{text.start.beginWords}</p>
          <Link className="press" href={hrefs.newCampaign()}>
            {text.campaign.new}
          </Link>
        </div>
      </div>
      <p className="soft">{text.start.fromFiles}</p>
      <code className="empty-command">{text.campaigns.emptyCommand}</code>
    </>
  );
}
