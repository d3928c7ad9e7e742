import type { Theme } from "@univerjs/themes";
import { defaultTheme } from "@univerjs/themes";

/** The grid’s own controls in chalk-blue instead of its usual blue. */
export const gridTheme: Theme = {
  ...defaultTheme,
  primary: {
    50: "#EBF4FC",
    100: "#D1E4F6",
    200: "#B6D3EF",
    300: "#9CC1E6",
    400: "#82AEDB",
    500: "#5286C3",
    600: "#1F5FA8",
    700: "#1A4E8C",
    800: "#17447A",
    900: "#133864",
  },
};
