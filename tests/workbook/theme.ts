import { defaultTheme } from "@univerjs/themes";

/** The grid's own theme with the page's warm neutrals in place of its blues. */
export const theme: typeof defaultTheme = {
  ...defaultTheme,
  primary: {
    50: "#FAF6EC",
    100: "#F4ECD8",
    200: "#E8D9B4",
    300: "#D9C28A",
    400: "#B6934A",
    500: "#9C7A30",
    600: "#8A6A1F",
    700: "#73571A",
    800: "#5E4716",
    900: "#4A3812",
  },
};
