const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A title as the name of a file that every system takes: no marks that a path or a shell would read, no control or
 * direction marks, no more than 80 characters, and no more bytes than a folder takes for a name.
 * @param ending kept whole, with its dot, e.g. `.csv`
 */
export function fileName(title: string, ending: string): string {
  const plain = [
    ...title
      .normalize('NFC')
      .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}<>:"/\\|?*]+/gu, ' ')
      .replace(/\s+/g, ' ')
  ]
    .slice(0, 80)
    .join('')
    .replace(/^[. ]+|[. ]+$/g, '');
  // Older systems reserve a name whatever follows its first dot.
  const isFree = plain !== '' && !reserved.test(plain.split('.', 1)[0] as string);
  return shortened(isFree ? plain : 'workbook', mostBytes - byteLength(ending)) + ending;
}

/** Folders take 255 bytes for a name as a rule (common practice, no source); room is left for a number at its end. */
const mostBytes = 240;

const byteLength = (text: string): number => new TextEncoder().encode(text).length;

function shortened(text: string, bytes: number): string {
  const letters = [...text];
  while (byteLength(letters.join('')) > bytes) letters.pop();
  return letters.join('').trimEnd();
}
