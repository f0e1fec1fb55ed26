"""The camera report as a PDF library sees it: structure tree, outline, attachments, language, metadata."""

import sys
from pathlib import Path

import pypdf

from report import Checks


def main(folder):
    checks = Checks()
    reports = sorted(Path(folder).glob("packs/*/*-camera-report.pdf"))
    checks.check("there is a camera report", len(reports) > 0)
    for path in reports:
        look(checks, path)
    print(f"pypdf {pypdf.__version__}, Python {sys.version.split()[0]}")
    checks.end()


def look(checks, path):
    name = path.name
    with open(path, "rb") as file:
        reader = pypdf.PdfReader(file, strict=True)
        root = reader.trailer["/Root"]
        checks.check(f"{name}: says its language", str(root.get("/Lang", "")).lower().startswith("en"), root.get("/Lang"))
        checks.check(f"{name}: is tagged", root.get("/MarkInfo", {}).get("/Marked") == True)  # noqa: E712 (a PDF object)
        checks.check(f"{name}: shows its title", root.get("/ViewerPreferences", {}).get("/DisplayDocTitle") == True)  # noqa: E712
        checks.check(f"{name}: has a title", bool(reader.metadata and reader.metadata.title))
        checks.check(f"{name}: has bookmarks", len(reader.outline) > 0)
        attached = set(reader.attachments)
        for on_disk in sorted(path.parent.glob("vfx/*/lens.csv")):
            wanted = f"{on_disk.parent.name}-lens.csv"
            checks.check(f"{name}: holds {wanted}", wanted in attached, sorted(attached))
            if wanted in attached:
                checks.check(f"{name}: its {wanted} is the pack's", reader.attachments[wanted][0] == on_disk.read_bytes())
        for wanted in ("takes.csv", "day.json"):
            checks.check(f"{name}: holds {wanted}", wanted in attached, sorted(attached))
            on_disk = path.parent / wanted
            if wanted in attached and on_disk.exists():
                same = reader.attachments[wanted][0] == on_disk.read_bytes()
                checks.check(f"{name}: its {wanted} is the pack's", same)
        kinds = tags(root["/StructTreeRoot"])
        checks.check(f"{name}: has exactly one H1", kinds.count("/H1") == 1, kinds.count("/H1"))
        for tag in ("/Table", "/TR", "/TH", "/TD"):
            checks.check(f"{name}: uses {tag}", tag in kinds)
        levels = [int(k[2:]) for k in kinds if len(k) == 3 and k.startswith("/H") and k[2:].isdigit()]
        checks.check(f"{name}: skips no heading level", all(b <= a + 1 for a, b in zip(levels, levels[1:])), levels)
        nodes = list(elements(root["/StructTreeRoot"]))
        heads = [node for node in nodes if node["/S"] == "/TH"]
        checks.check(f"{name}: every header cell has a scope", all(scope_of(node) in ("/Row", "/Column") for node in heads))
        figures = [str(node.get("/Alt", "")) for node in nodes if node["/S"] == "/Figure"]
        checks.check(f"{name}: figures say what is seen", len(figures) > 0 and all(len(words) > 20 for words in figures), figures)
        links = [a for page in reader.pages for a in (b.get_object() for b in page.get("/Annots", [])) if a["/Subtype"] == "/Link"]
        checks.check(f"{name}: links are tagged and say where to", all("/Contents" in a and "/StructParent" in a for a in links))
        checks.check(f"{name}: a link element a link", kinds.count("/Link") == len(links) > 0, (kinds.count("/Link"), len(links)))
        places = reader.named_destinations
        checks.check(f"{name}: links lead somewhere", all(a["/A"]["/D"] in places for a in links))
        checks.check(f"{name}: links lead to what they name", misled(reader, links) == [], misled(reader, links)[:4])
        checks.check(f"{name}: has contents", "/TOC" in kinds and "/TOCI" in kinds)
        checks.check(f"{name}: cells lie in rows", cells_in_rows(root["/StructTreeRoot"]))
        text = "\n".join(page.extract_text() for page in reader.pages)
        checks.check(f"{name}: its text can be read", len(text) > 500, len(text))
        checks.check(f"{name}: every page has text", all(page.extract_text().strip() for page in reader.pages))


def misled(reader, links):
    """Links of the contents and the take tables whose page does not hold the words that they promise."""
    texts = {}
    wrong = []
    for link in links:
        page = reader.get_destination_page_number(reader.named_destinations[link["/A"]["/D"]])
        if page not in texts:
            texts[page] = " ".join(reader.pages[page].extract_text().split())
        said = " ".join(str(link["/Contents"]).split())
        # "33B take 1 A: go to its focus" leads to the head of that take, "Plate sheet of slate 33B" and "Plate sheets" to a sheet
        wanted = said.split(": go to")[0].replace("Plate sheet of slate", "Plate sheet").replace("Plate sheets", "Plate sheet")
        if page is None or wanted not in texts[page]:
            wrong.append((said, page))
    return wrong


def children(node):
    kids = node.get("/K", [])
    kids = kids.get_object() if hasattr(kids, "get_object") else kids
    kids = kids if isinstance(kids, list) else [kids]
    for kid in kids:
        kid = kid.get_object() if hasattr(kid, "get_object") else kid
        if isinstance(kid, dict) and "/S" in kid:
            yield kid


def tags(node):
    """Structure types in reading order."""
    return [tag for kid in children(node) for tag in [str(kid["/S"]), *tags(kid)]]


def elements(node):
    for kid in children(node):
        yield kid
        yield from elements(kid)


def scope_of(node):
    given = node.get("/A", {})
    given = given.get_object() if hasattr(given, "get_object") else given
    parts = given if isinstance(given, list) else [given]
    return next((part.get_object().get("/Scope") for part in parts if part.get_object().get("/Scope")), None)


def cells_in_rows(node, parent=""):
    for kid in children(node):
        kind = str(kid["/S"])
        if kind in ("/TD", "/TH") and parent != "/TR":
            return False
        if not cells_in_rows(kid, kind):
            return False
    return True


if __name__ == "__main__":
    main(sys.argv[1])
