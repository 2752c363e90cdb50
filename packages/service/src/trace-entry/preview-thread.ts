// The thread in which a long recording is read for its preview: file in, what it says out.
import { answerInThread } from '../thread-answer.ts';
import { type FilePreview, type PreviewInput, readPreview } from './read-preview.ts';

await answerInThread<PreviewInput, FilePreview>(readPreview);
