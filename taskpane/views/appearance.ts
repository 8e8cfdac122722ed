import { onThemeChange, theme } from "../excel/host";

const systemDark = window.matchMedia("(prefers-color-scheme: dark)");

/** Gives the page the theme of Office, or the system's where Office gives none, and follows changes of both. */
export function followAppearance(): void {
  applyTheme();
  onThemeChange(applyTheme);
  systemDark.addEventListener("change", applyTheme);
}

function applyTheme(): void {
  const office = theme();
  const root = document.documentElement;
  root.dataset.theme = (office?.dark ?? systemDark.matches) ? "dark" : "light";
  root.toggleAttribute("data-high-contrast", office?.highContrast ?? false);
  if (office?.highContrast) {
    root.style.setProperty("--office-background", office.background);
    root.style.setProperty("--office-foreground", office.foreground);
  }
}
