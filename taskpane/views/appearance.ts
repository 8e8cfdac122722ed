import { onThemeChange, theme } from "../excel/host";

const systemDark = window.matchMedia("(prefers-color-scheme: dark)");

/** Dresses the page as Office is dressed, or as the system is where Office does not say; keeps following both. */
export function followAppearance(): void {
  dress();
  onThemeChange(dress);
  systemDark.addEventListener("change", dress);
}

function dress(): void {
  const office = theme();
  const root = document.documentElement;
  root.dataset.theme = (office?.dark ?? systemDark.matches) ? "dark" : "light";
  root.toggleAttribute("data-high-contrast", office?.highContrast ?? false);
  if (office?.highContrast) {
    root.style.setProperty("--office-background", office.background);
    root.style.setProperty("--office-foreground", office.foreground);
  }
}
