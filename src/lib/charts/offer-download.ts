/** Hands bytes to the person as a file with this name. */
export function offerDownload(content: Blob, fileName: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser has taken the bytes over by the next task.
  setTimeout(() => URL.revokeObjectURL(address));
}

/** A title as a file name: letters, digits and hyphens. */
export function fileNameFrom(title: string, extension: string): string {
  const stem = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return `${stem === '' ? 'chart' : stem}.${extension}`;
}
