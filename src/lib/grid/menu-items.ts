import type { Command, RowCommand } from './keys.ts';
import type { SortWay } from './row-order.ts';

export interface MenuItem {
  readonly label: string;
  /** Keys that do the same, as `keysShown` takes them; left out where there are none. */
  readonly keys?: string;
  readonly disabled?: boolean;
  readonly command: Command | { readonly kind: 'show-keys' };
}

/** What the menu of a cell and its rows offers, in groups. */
export function menuItems(on: {
  readonly manyRows: boolean;
  readonly manyColumns: boolean;
  readonly canAsk: boolean;
  /** Whether the cell takes a range, and whether it has one; null where ranges are not for this grid. */
  readonly range: 'none' | 'given' | 'shut' | null;
  /** Long grids take the key of the browser's search, which would see only the rows that are drawn. */
  readonly takesFindKey: boolean;
  /** The words for opening the row; null where it has no page. */
  readonly openLabel: string | null;
  readonly canGrow: boolean;
  readonly canReorder: boolean;
  /** What a sort by the cell's column is called, upwards and downwards; null where rows are not sorted. */
  readonly sorts: Readonly<Record<SortWay, string>> | null;
  readonly canFilter: boolean;
  readonly hidesAny: boolean;
  readonly canDo: (command: RowCommand) => boolean;
}): readonly (readonly MenuItem[])[] {
  const row = (label: string, keys: string, command: RowCommand): MenuItem => ({
    label,
    keys,
    disabled: !on.canDo(command),
    command: { kind: 'row', row: command }
  });
  const rows = on.manyRows ? 'rows' : 'row';
  const groups: MenuItem[][] = [
    [
      ...(on.canAsk
        ? [{ label: 'Where does this come from?', keys: 'F8', command: { kind: 'ask' } as const }]
        : []),
      ...(on.range === null
        ? []
        : [
            {
              label: on.range === 'given' ? 'Change the range of this cell' : 'Give this cell a range',
              keys: 'Alt+Shift+R',
              disabled: on.range === 'shut',
              command: { kind: 'range' } as const
            }
          ]),
      ...(on.openLabel === null
        ? []
        : [{ label: on.openLabel, keys: 'Ctrl+Enter', command: { kind: 'open' } as const }])
    ],
    [
      { label: 'Cut', keys: 'Ctrl+X', command: { kind: 'cut' } },
      { label: 'Copy', keys: 'Ctrl+C', command: { kind: 'copy' } },
      { label: 'Copy with headings', keys: 'Alt+Shift+C', command: { kind: 'copy-with-headings' } },
      { label: 'Paste', keys: 'Ctrl+V', command: { kind: 'paste' } }
    ],
    [
      { label: 'Clear', keys: 'Delete', command: { kind: 'clear' } },
      { label: 'Fill down', keys: 'Ctrl+D', command: { kind: 'fill-down' } },
      { label: 'Fill right', keys: 'Ctrl+R', command: { kind: 'fill-right' } }
    ],
    on.canGrow
      ? [
          row('Insert row above', 'Alt+Shift+Enter', 'insert-above'),
          row('Insert row below', 'Alt+Enter', 'insert-below'),
          row(`Duplicate ${rows}`, 'Alt+Shift+D', 'duplicate'),
          row(`Delete ${rows}`, 'Alt+Shift+Delete', 'delete-rows')
        ]
      : [],
    on.canReorder
      ? [
          row(`Move ${rows} up`, 'Alt+Shift+ArrowUp', 'move-up'),
          row(`Move ${rows} down`, 'Alt+Shift+ArrowDown', 'move-down')
        ]
      : [],
    [
      ...(on.sorts === null
        ? []
        : [
            {
              label: `Sort by this column, ${on.sorts.up}`,
              keys: 'Alt+Shift+S',
              command: { kind: 'sort', way: 'up' } as const
            },
            {
              label: `Sort by this column, ${on.sorts.down}`,
              command: { kind: 'sort', way: 'down' } as const
            }
          ]),
      ...(on.canFilter
        ? [
            {
              label: 'Only rows like this cell',
              keys: 'Alt+Shift+L',
              command: { kind: 'like-this' } as const
            },
            { label: 'Filter the rows', keys: 'Alt+Shift+F', command: { kind: 'filter' } as const }
          ]
        : [])
    ],
    [
      { label: 'Fit column to its content', command: { kind: 'fit-column' } },
      { label: 'Reset column width', command: { kind: 'reset-column' } },
      {
        label: on.manyColumns ? 'Hide these columns' : 'Hide this column',
        keys: 'Alt+Shift+H',
        command: { kind: 'hide-columns' }
      },
      {
        label: 'Show all rows and columns',
        keys: 'Alt+Shift+A',
        disabled: !on.hidesAny,
        command: { kind: 'show-all' }
      }
    ],
    [
      {
        label: 'Find in this grid',
        ...(on.takesFindKey ? { keys: 'Ctrl+F' } : {}),
        command: { kind: 'find' }
      },
      { label: 'Replace in this grid', keys: 'Ctrl+H', command: { kind: 'replace' } },
      { label: 'Keys of the grid', command: { kind: 'show-keys' } }
    ]
  ];
  return groups.filter((group) => group.length > 0);
}
