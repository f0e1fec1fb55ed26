"""The hash list of a pack under the standard's own reference program: intact passes, damage of each kind is named."""

import re
import shutil
import subprocess
import sys
import tempfile
from importlib.metadata import version
from pathlib import Path

from report import Checks

sys.path.insert(0, str(Path(__file__).parent / "helpers"))
import odd_show

BIN = Path(sys.executable).parent


def reference(pack, *more):
    done = subprocess.run([str(BIN / "ascmhl-debug"), "verify", "-v", *more, str(pack)], capture_output=True, text=True)
    return done.returncode, done.stdout + done.stderr


def main(folder):
    checks = Checks()
    packs = sorted(path.parent for path in Path(folder).glob("packs/*/ascmhl"))
    checks.check("every pack has a hash list", len(packs) == len(list(Path(folder).glob("packs/*"))) > 0)
    for pack in packs:
        intact(checks, pack)
    # what takes a copy is done with the smallest: a list is made and read the same way whatever its length
    smallest = min(packs, key=lambda pack: sum(p.stat().st_size for p in pack.rglob("*") if p.is_file()))
    received(checks, smallest)
    damage(checks, smallest)
    issued_again(checks)
    print(f"ascmhl {version('ascmhl')}")
    checks.end()


def files(pack):
    return sorted(p.relative_to(pack).as_posix() for p in pack.rglob("*") if p.is_file() and "ascmhl" not in p.relative_to(pack).parts)


def intact(checks, pack):
    code, text = reference(pack)
    checks.check(f"{pack.name}: an intact pack passes", code == 0, text)
    verified = sorted(re.findall(r"verification \(c4\) of file (.+): OK", text))
    checks.check(f"{pack.name}: every file is verified", verified == files(pack), set(files(pack)) ^ set(verified))
    info = subprocess.run([str(BIN / "ascmhl"), "info", str(pack)], capture_output=True, text=True)
    checks.check(f"{pack.name}: one generation", "Generation 1 " in info.stdout and "Generation 2" not in info.stdout, info.stdout)


def received(checks, pack):
    with tempfile.TemporaryDirectory() as work:
        copy = shutil.copytree(pack, Path(work) / "pack")
        for kind in ("md5", "c4"):
            made = subprocess.run([str(BIN / "ascmhl"), "create", "-h", kind, str(copy)], capture_output=True, text=True)
            checks.check(f"{pack.name}: a receiver can add a generation with {kind}", made.returncode == 0, made.stderr)
        checks.check(f"{pack.name}: and the pack passes still", reference(copy)[0] == 0)
        ours = daybook("verify", copy)
        checks.check(f"{pack.name}: with our own program too", ours.returncode == 0, ours.stdout)


def damage(checks, pack):
    target = "takes.csv"

    def flip(copy):
        content = bytearray((copy / target).read_bytes())
        content[len(content) // 2] ^= 1
        (copy / target).write_bytes(content)

    cases = [
        ("a flipped bit", flip, 11, f"hash mismatch        for {target}", "changed"),
        ("a missing file", lambda copy: (copy / target).unlink(), 10, f"missing file(s):\n  {target}", "missing"),
        ("an extra file", lambda copy: (copy / "extra.txt").write_text("x"), 21, "found new file extra.txt", "extra"),
    ]
    for name, spoil, expected, words, ours in cases:
        with tempfile.TemporaryDirectory() as work:
            copy = shutil.copytree(pack, Path(work) / "pack")
            spoil(copy)
            code, text = reference(copy)
            checks.check(f"{pack.name}: {name} is reported", code == expected and words in text, f"{code} {text[-300:]}")
            found = daybook("verify", copy, "--quiet")
            checks.check(f"{pack.name}: {name} is reported by our own program", found.returncode == 1 and found.stdout.startswith(ours), found.stdout)
    with tempfile.TemporaryDirectory() as work:
        copy = shutil.copytree(pack, Path(work) / "pack")
        manifest = next((copy / "ascmhl").glob("0001_*.mhl"))
        manifest.write_text(manifest.read_text().replace("<process>", "<process >", 1))
        code, text = reference(copy)
        checks.check(f"{pack.name}: a forged list is reported", code == 31, f"{code} {text[-300:]}")


def issued_again(checks):
    """Built again before it is issued a pack has one list and passes. Issued again it has a second; the first stays, and against
    all lists the program names what changed since."""
    holder, report = odd_show.build()
    pack = next(report.glob("packs/*"))
    show = report.parent / "show"
    notes = show / "days" / odd_show.DATE / "notes.csv"

    def change(before, after):
        notes.write_text(notes.read_text(encoding="utf-8").replace(before, after), encoding="utf-8")
        odd_show.run(show, report)

    def lists():
        return sorted(p.name[:4] for p in (pack / "ascmhl").glob("*.mhl"))

    change("2A,1,B", "2A,3,B")
    code, text = reference(pack)
    checks.check("built again before it is issued: one list, and the pack passes", (code, lists()) == (0, ["0001"]), text)
    issued = daybook("pack", show, "--day", odd_show.DATE, "--report", report)
    checks.check("it is issued", issued.returncode in (0, 1) and "hash list 1, issued now" in issued.stdout, issued.stdout + issued.stderr)
    first = next((pack / "ascmhl").glob("0001_*.mhl"))
    before = first.read_bytes()
    unchanged = {name: (pack / name).read_bytes() for name in files(pack)}
    change("2A,3,B", "2A,4,B")
    change("2A,4,B", "2A,2,B")
    checks.check("issued again: one more list after two builds", lists() == ["0001", "0002"], lists())
    second = next((pack / "ascmhl").glob("0002_*.mhl"))
    checks.check("issued again: the first list stays", first.read_bytes() == before)
    code, text = reference(pack, "-pl", str(second))
    checks.check("issued again: the pack passes against its newest list", code == 0, text)
    code, text = reference(pack)
    changed = sorted(name for name in files(pack) if unchanged.get(name) not in (None, (pack / name).read_bytes()))
    named = sorted(re.findall(r"hash mismatch\s+for (\S+)", text))
    checks.check("issued again: against all lists exactly the changed files are named", code != 0 and named == changed, f"{named} {changed}")
    holder.cleanup()


def daybook(*arguments):
    return subprocess.run(["node", "dist/cli/main.js", *map(str, arguments)], cwd=odd_show.ROOT, capture_output=True, text=True)


if __name__ == "__main__":
    main(sys.argv[1])
