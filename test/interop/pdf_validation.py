"""PDFs validated by veraPDF against PDF/A-3b and PDF/UA-1: no failure of either. Damaged ones must fail.

Of the demo every camera report, and the readers' PDFs of its first day; then example shows and shows with odd titles.
"""

import os
import subprocess
import sys
import tempfile
from pathlib import Path

from helpers import odd_show, verapdf
from report import Checks

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT.parent / "shared" / "example"
READERS = ["editorial", "vfx", "production"]
# profile, bytes to find, bytes of the same length in their place, what that takes away
DAMAGES = [
    ("3b", b"/FontFile2", b"/FontFileX", "the file of a typeface"),
    ("3b", b"/OutputIntents", b"/OutputIntentX", "what its colours mean"),
    ("3b", b"/AFRelationship", b"/AFRelationshiX", "the relationship of its attachments"),
    ("3b", b"<pdfaid:part>3", b"<pdfaid:part>9", "its part of PDF/A"),
    ("3b", b"pdfaProperty:name>part<", b"pdfaProperty:name>pXrt<", "the description of the PDF/UA property"),
    ("ua1", b"/StructTreeRoot", b"/StructTreeRooX", "the structure tree"),
    ("ua1", b"/Marked true", b"/MarkeX true", "the mark that it is tagged"),
    ("ua1", b"/Alt (", b"/AlX (", "the words of its figures"),
    ("ua1", b"/Contents (", b"/ContentX (", "the words of its links"),
    ("ua1", b"/StructParent ", b"/StructParenX ", "the tags of its links"),
    ("ua1", b"/Lang (", b"/LanX (", "its language"),
    ("ua1", b"/DisplayDocTitle true", b"/DisplayDocTitlX true", "the title in the window"),
    ("ua1", b"/S /TOCI", b"/S /Span", "the entries of its contents"),
    ("ua1", b"<pdfuaid:part>1", b"<pdfuaid:part>7", "its part of PDF/UA"),
]
# name of a show: its title, and the readers that get a PDF of their own
TITLES = {
    "signs": ("Tide & Tin <draft> \"one\" 'two'", []),
    "emoji": ("🎬 The 🎞️ 👩‍🎥 film", []),
    "right-to-left": ("שלום עולם 12 and مرحبا", ["editorial"]),
    "long": ("Long title " * 27 + "end", READERS),
}


def main(demo):
    checks = Checks()
    why = verapdf.missing()
    if why is not None:
        in_ci = os.environ.get("CI") == "true"
        checks.check(f"veraPDF runs ({why})", not in_ci)
        print(f"skipped: pdf_validation.py ({why}): no PDF was validated")
        checks.passed = 0
        return checks.end()
    with tempfile.TemporaryDirectory(prefix="daybook-validation-") as folder:
        folder = Path(folder)
        paths = [*of_demo(checks, Path(demo)), *built(checks, folder)]
        names = {"3b": "PDF/A-3b", "ua1": "PDF/UA-1"}
        for flavour, verdicts in verapdf.verdicts({flavour: paths for flavour in names}).items():
            name = names[flavour]
            for path, rules in verdicts.items():
                shown = "/".join(path.parts[-4:])
                checks.check(f"{shown}: {name}", rules == [], "said nothing" if rules is None else "; ".join(rules[:6]))
        print(f"{len(paths)} PDFs against PDF/A-3b and PDF/UA-1")
        damaged(checks, smallest_with_all(paths), folder)
    print(f"{verapdf.ARTIFACT}, Python {sys.version.split()[0]}")
    checks.end()


def of_demo(checks, demo):
    """The camera reports, and the PDFs of all readers of the first day."""
    reports = sorted(demo.glob("packs/*/*-camera-report.pdf"))
    checks.check("the demo has camera reports", len(reports) > 1, len(reports))
    first = [path for reader in READERS for path in reports[0].parent.glob(f"*-{reader}.pdf")]
    checks.check("the first day of the demo has a PDF for each reader", len(first) == len(READERS), len(first))
    return [*reports, *first]


def built(checks, folder):
    """PDFs of the example shows and of shows with odd titles."""
    shows = {}
    for name in ("basic", "wide"):
        if (EXAMPLES / name).exists():
            shows[name] = (EXAMPLES / name, [])
        else:
            print(f"skipped: example show {name} (not in {EXAMPLES.name}/ beside the clone)")
    for name, (title, readers) in TITLES.items():
        shows[name] = (odd(folder / "shows" / name, title), readers)
    found = []
    for name, (show, readers) in shows.items():
        out = folder / "out" / name
        options = [option for reader in readers for option in ("--pdf", reader)]
        run = subprocess.run(
            ["node", "dist/cli/main.js", "build", str(show), "--out", str(out), "--maps", "none", "--quiet", *options],
            cwd=ROOT,
            capture_output=True,
            text=True,
        )
        checks.check(f"{name} builds", run.returncode in (0, 1), run.stderr[-500:])
        pdfs = sorted(out.glob("packs/*/*.pdf"))
        days = len(list(out.glob("packs/*")))
        checks.check(f"{name}: every PDF asked for, every day", len(pdfs) > 0 and len(pdfs) == (1 + len(readers)) * days, len(pdfs))
        found += pdfs
    return found


def odd(show, title):
    """A show with odd names in two days, one of them empty; on Letter and in feet where the title is long."""
    extra = "paper: Letter\ndistances: imperial\n" if len(title) > 200 else ""
    files = {
        "show.yaml": f"title: {json_text(title)}\ncode: ODD\nrate: 30000/1001\ndrop_frame: true\n{extra}",
        "kit/cameras.csv": odd_show.CAMERAS,
        "kit/lenses.csv": odd_show.LENSES,
        f"days/{odd_show.DATE}/notes.csv": "\n".join([odd_show.HEAD, *odd_show.ROWS]) + "\n",
        f"days/{odd_show.DATE}/logs/b.csv": odd_show.log(),
        "days/2031-05-07/day.yaml": "date: 2031-05-07\n",
    }
    for name, text in files.items():
        path = show / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return show


def json_text(text):
    """In double quotes, as YAML reads it too."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def smallest_with_all(paths):
    """The smallest file that has everything that is taken away; the first one, which then fails by name, where none has."""
    whole = [path for path in paths if all(find in path.read_bytes() for _, find, _, _ in DAMAGES)]
    return min(whole, key=lambda path: path.stat().st_size, default=paths[0])


def damaged(checks, path, folder):
    """A validator that passes everything would pass these too."""
    original = path.read_bytes()
    wanted = {}
    for i, (flavour, find, put, what) in enumerate(DAMAGES):
        checks.check(f"the report has {what}", find in original)
        broken = folder / f"damaged-{i}.pdf"
        broken.write_bytes(original.replace(find, put))
        wanted.setdefault(flavour, {})[broken] = what
    for flavour, verdicts in verapdf.verdicts({flavour: list(files) for flavour, files in wanted.items()}).items():
        files = wanted[flavour]
        for broken, rules in verdicts.items():
            checks.check(f"without {files[broken]} it fails {flavour}", bool(rules), rules)


if __name__ == "__main__":
    main(sys.argv[1])
