const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A title as the name of a file that every system takes: no marks that a path or a shell would read, no control or
 * direction marks, no more than 80 characters.
 * @param ending with its dot, e.g. `.csv`
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
  return (plain === '' || reserved.test(plain) ? 'workbook' : plain) + ending;
}
