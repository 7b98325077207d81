/** Breaks a text between words into lines of at most `most` characters; a longer word stands alone. */
export function wrapWords(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}
