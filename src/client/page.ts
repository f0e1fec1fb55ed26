/** What every page does in the browser: the reader's choice of light or dark, copy buttons. Pages are complete without it. */
import { offerCopy } from "./parts/copy.ts";
import { offerTheme } from "./parts/theme.ts";
import { offerSearch } from "./search/dialog.ts";

offerTheme(document);
offerSearch(document);
offerCopy(document);
