// The thread in which a long recording that waits is looked through.
import { answerInThread } from '../thread-answer.ts';
import { type SpoolContent, spoolContent } from './spool-content.ts';

await answerInThread<string, SpoolContent>((spool) => spoolContent(spool));
