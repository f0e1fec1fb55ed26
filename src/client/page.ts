/** What every page does in the browser: the reader's choice of light or dark. Pages are complete without it. */
import { offerTheme } from "./parts/theme.ts";

offerTheme(document);
