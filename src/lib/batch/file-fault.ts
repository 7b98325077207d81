/** What the system says of a file that cannot be read or written, in words for a person. */
const words: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'there is no such file or folder'],
  ['EACCES', 'this is not allowed here'],
  ['EPERM', 'this is not allowed here, or another program holds the file'],
  ['EROFS', 'nothing can be written there'],
  ['EBUSY', 'another program holds the file'],
  ['EISDIR', 'a folder has that name'],
  ['ENOTDIR', 'a part of the path is a file, not a folder'],
  ['EEXIST', 'a file has the name of the folder'],
  ['ENOTEMPTY', 'a folder has that name'],
  ['ENAMETOOLONG', 'the name is too long for this disk'],
  ['ENOSPC', 'the disk is full'],
  ['EDQUOT', 'the disk has no room left for this user'],
  ['EFBIG', 'it is larger than a file may be here'],
  ['EMFILE', 'too many files are open'],
  ['EIO', 'the disk does not answer as it should']
]);

/** The fault in words; one that is not known as the system puts it, without the path that it repeats. */
export function fileFault(error: unknown): string {
  const { code, message } = error as { readonly code?: unknown; readonly message?: unknown };
  const known = typeof code === 'string' ? words.get(code) : undefined;
  return known ?? String(message ?? error).replace(/, \w+ '.*$/s, '');
}
