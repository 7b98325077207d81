/**
 * Places that mean something on one machine or in one network only: absolute paths of somebody's folders, and hosts
 * that packages are fetched from. What the repository needs, any machine must be able to find.
 *
 * @returns each of them, as written
 */
export function privatePlaces(text: string): string[] {
  return [...text.matchAll(personalFolder), ...text.matchAll(packageHost)].map(([place]) => place);
}

// Not preceded by what would make it the middle of an address or of a relative path.
const personalFolder =
  /(?<![\w.~)\]}*-])(?:\/(?:home|Users|root|mnt|work|workspace|builds)\/|[A-Z]:[\\/]+Users[\\/])\S*/g;
const packageHost = /https?:\/\/[^\s/"'`]*\b(?:registry|npmjs|artifactory|nexus|verdaccio)\b[^\s"'`]*/g;
