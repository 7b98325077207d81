/** Entries of a list in files that refer to them: by name where only one has it, else by id. */
export interface EntryNames {
  readonly textOf: (id: string) => string;
  /** The id of the entry that a text means; undefined where it means none, or more than one. */
  readonly idOf: (text: string) => string | undefined;
}

export function entryNames(entries: readonly { readonly id: string; readonly name: string }[]): EntryNames {
  const ids = new Set(entries.map(({ id }) => id));
  const nameById = new Map(entries.map(({ id, name }) => [id, name]));
  const idByName = new Map<string, string | null>();
  for (const { id, name } of entries) idByName.set(name, idByName.has(name) ? null : id);
  return {
    textOf: (id) => {
      const name = nameById.get(id);
      return name !== undefined && !ids.has(name) && idByName.get(name) === id ? name : id;
    },
    idOf: (text) => (ids.has(text) ? text : (idByName.get(text) ?? undefined))
  };
}
