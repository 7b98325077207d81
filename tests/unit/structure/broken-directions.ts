import path from 'node:path/posix';
import { doors, rooms, type Room } from './house.ts';
import { importsOf, type Import } from './imports-of.ts';

/** Sources by their path relative to `src`, with forward slashes. */
export type Sources = ReadonlyMap<string, string>;

/** @returns one sentence for each import that the house does not allow, and for each file that lies in no room */
export function brokenDirections(sources: Sources): string[] {
  return [...sources].flatMap(([file, source]) => {
    const room = rooms.find(({ place }) => isIn(file, place));
    if (!room) return [`${file} lies in no room of the house`];
    return importsOf(file, source).flatMap((used) => judge(file, room, used) ?? []);
  });
}

function judge(file: string, room: Room, used: Import): string | null {
  const { specifier, typesOnly } = used;
  const target = ownFile(file, specifier);
  if (target === null) {
    const door = doors[packageOf(specifier)];
    if (!door) return `${file} imports ${specifier}, for which there is no door`;
    return door.some((place) => isIn(file, place))
      ? null
      : `${file} imports ${specifier}, which is for ${door.join(' and ')} alone`;
  }
  const isKnown = [room.place, ...room.knows].some((place) => isIn(target, place));
  if (isKnown) return null;
  const isKnownByType = (room.knowsTypesOf ?? []).some((place) => isIn(target, place));
  if (!isKnownByType) return `${file} imports ${target}, but ${room.place} does not know it`;
  return typesOnly ? null : `${file} imports code of ${target}, but ${room.place} may know its types alone`;
}

/**
 * @param file the importing file
 * @returns the imported file, relative to `src`; null where it is not one of ours
 */
export function ownFile(file: string, specifier: string): string | null {
  if (specifier.startsWith('#lib/')) return path.normalize(specifier.replace('#lib/', 'lib/'));
  if (!specifier.startsWith('.')) return null;
  const target = path.join(path.dirname(file), specifier);
  // The framework writes each page's types beside it, where no file is to be seen.
  return path.basename(target) === '$types' ? file : target;
}

function packageOf(specifier: string): string {
  const [first = '', second = ''] = specifier.split('/');
  return first.startsWith('@') ? `${first}/${second}` : first;
}

function isIn(file: string, place: string): boolean {
  return place.endsWith('/') ? file.startsWith(place) : file === place;
}
