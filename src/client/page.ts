/** What every page does in the browser: the reader's choice of light or dark, of units; copy buttons. Pages are complete without it. */
import { offerCopy } from "./parts/copy.ts";
import { offerTheme } from "./parts/theme.ts";
import { offerUnits } from "./parts/units.ts";
import { offerSearch } from "./search/dialog.ts";

offerTheme(document);
offerUnits(document);
offerSearch(document);
offerCopy(document);
