/** Day or night paper: a habit of this device, not part of any job. */
export type Theme = 'auto' | 'light' | 'dark';

/** Name under which the device remembers; the page's head reads it before the first paint. */
export const THEME_KEY = 'theme';

export const isTheme = (text: string | null | undefined): text is Theme =>
  text === 'auto' || text === 'light' || text === 'dark';

/** What the device remembers; `auto` where it remembers nothing or may not. */
export function rememberedTheme(): Theme {
  try {
    const text = localStorage.getItem(THEME_KEY);
    return isTheme(text) ? text : 'auto';
  } catch {
    return 'auto'; // storage refused: private window
  }
}

/** Put the theme on the page and remember it. */
export function setTheme(theme: Theme): void {
  const root = document.documentElement;
  if (theme === 'auto') delete root.dataset.theme;
  else root.dataset.theme = theme;
  try {
    localStorage.setItem(THEME_KEY, theme);
  } catch {
    // The theme still holds for this page.
  }
}
