/** What every page does in the browser: the reader's choice of light or dark, of units; search, tables, copy buttons. Pages are complete without it. */
import { offerAnchors } from "./parts/anchors.ts";
import { offerCopy } from "./parts/copy.ts";
import { offerTheme } from "./parts/theme.ts";
import { offerUnits } from "./parts/units.ts";
import { offerSearch } from "./search/dialog.ts";
import { offerTables } from "./table/start.ts";

offerTheme(document);
offerUnits(document);
offerSearch(document);
offerCopy(document);
offerAnchors(document);
offerTables(document);
