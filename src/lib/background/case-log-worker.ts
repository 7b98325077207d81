/** Groups a case log off the page's thread. The file is read here, piece by piece; nothing of it goes back but sums. */
import { workOn } from './run-in-worker.ts';
import type { CaseLogRun, ReadCaseLog } from '#lib/files/case-log/read-case-log.ts';
import { readCaseLog } from '#lib/files/case-log/read-case-log.ts';
import { filePieces } from '#lib/files/case-log/file-pieces.ts';

export interface CaseLogTask {
  readonly file: Blob;
  readonly run: CaseLogRun;
}

workOn<CaseLogTask, ReadCaseLog>(async ({ file, run }, tell) => {
  try {
    return await readCaseLog(filePieces(file), run, {
      progress: (bytesRead) => tell({ share: file.size === 0 ? 1 : bytesRead / file.size, words: '' })
    });
  } catch {
    return {
      kind: 'refused',
      sentence: 'The file could not be read to its end: it was moved or changed meanwhile. Choose it again.'
    };
  }
});
