/** Groups a case log off the page's thread. The file is read here, piece by piece; nothing of it goes back but sums. */
import type { CaseLogRun, ReadCaseLog } from './read-case-log.ts';
import { readCaseLog } from './read-case-log.ts';
import { filePieces } from './file-pieces.ts';

export interface CaseLogTask {
  readonly file: Blob;
  readonly run: CaseLogRun;
}

export type CaseLogNews =
  | { readonly kind: 'progress'; readonly bytesRead: number }
  | { readonly kind: 'result'; readonly result: ReadCaseLog };

const tell = (news: CaseLogNews) => globalThis.postMessage(news);

globalThis.onmessage = async ({ data }: MessageEvent<CaseLogTask>) => {
  tell({ kind: 'result', result: await resultOf(data) });
};

async function resultOf({ file, run }: CaseLogTask): Promise<ReadCaseLog> {
  try {
    return await readCaseLog(filePieces(file), run, {
      progress: (bytesRead) => tell({ kind: 'progress', bytesRead })
    });
  } catch {
    return {
      kind: 'refused',
      sentence: 'The file could not be read to its end: it was moved or changed meanwhile. Choose it again.'
    };
  }
}
