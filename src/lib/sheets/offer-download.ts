/** Hands bytes to the browser as a file to keep. */
export function offerDownload(name: string, bytes: Uint8Array, type: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken its copy by the next turn of events.
  setTimeout(() => URL.revokeObjectURL(url), 0);
}
