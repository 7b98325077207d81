/**
 * Folders of tests of the core and the document, which have no state of their own: their files share what is loaded, and
 * so take a third of the time. A test holds them to change nothing of it.
 */
export const coreFolders = [
  ...['whole', 'published', 'property'],
  ...['calc', 'workbook', 'numbers', 'files'].map((room) => `unit/${room}`)
];
