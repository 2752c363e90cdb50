// The thread in which a finding is assembled: evidence in, finding or fault out. It is ended from outside to cancel.
import type { CampaignFinding } from '@provinghouse/contract';
import { answerInThread } from '../thread-answer.ts';
import { assembleFinding } from './assemble.ts';
import type { Evidence } from './evidence.ts';

await answerInThread<Evidence, CampaignFinding>((evidence, progress) =>
  assembleFinding(evidence, (done, total) => progress('judging', done, total)),
);
