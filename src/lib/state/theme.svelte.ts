/** Light or dark: as the system has it, or as the user chose. `app.html` sets the kept choice before the first paint. */

export const themes = ['system', 'light', 'dark'] as const;
export type Theme = (typeof themes)[number];

/** The name under which it is kept; `app.html` says the same. */
const key = 'vapour-ledger.theme';

class ThemeChoice {
  #chosen: Theme = $state(onPage());

  get chosen(): Theme {
    return this.#chosen;
  }

  choose(theme: Theme): void {
    this.#chosen = theme;
    if (theme === 'system') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = theme;
    try {
      localStorage.setItem(key, theme);
    } catch {
      // A browser that keeps nothing: the choice holds until the page is left.
    }
  }
}

function onPage(): Theme {
  const named = typeof document === 'undefined' ? undefined : document.documentElement.dataset['theme'];
  return themes.find((theme) => theme === named) ?? 'system';
}

export const themeChoice = new ThemeChoice();
