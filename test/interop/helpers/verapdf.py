"""veraPDF, fetched once from Maven Central, run on many files at a time."""

import os
import re
import shutil
import subprocess
from pathlib import Path

ARTIFACT = "org.verapdf.apps:greenfield-apps:1.28.1"
MAIN = "org.verapdf.apps.GreenfieldCliWrapper"
# it ends before the second compiler and the parallel collector have paid for themselves: half the processor time
QUICK = ("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1")


def missing():
    """Why it cannot run here, or None."""
    for program in ("java", "mvn"):
        if shutil.which(program) is None:
            return f"no {program} in PATH"
    return None if jar().exists() or fetch() else f"{ARTIFACT} could not be fetched"


def jar():
    group, name, version = ARTIFACT.split(":")
    home = Path(os.environ.get("MAVEN_REPO_LOCAL", Path.home() / ".m2" / "repository"))
    return home / group.replace(".", "/") / name / version / f"{name}-{version}.jar"


def fetch():
    command = [shutil.which("mvn"), "-q", "dependency:get", "-Dtransitive=false", f"-Dartifact={ARTIFACT}"]
    if "MAVEN_REPO_LOCAL" in os.environ:
        command.append(f"-Dmaven.repo.local={os.environ['MAVEN_REPO_LOCAL']}")
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode != 0:
        print(done.stdout[-2000:])
    return done.returncode == 0 and jar().exists()


def verdicts(wanted):
    """Of the files wanted for each flavour: path to the rules that failed, as veraPDF names them.

    An empty list where a file passes, None where veraPDF said nothing. One process a flavour, side by side: a process that
    validates both at once finds glyphs without Unicode in PDF/UA-1 that it does not find alone.
    """
    running = {flavour: started(flavour, paths) for flavour, paths in wanted.items()}
    return {flavour: read(running[flavour].communicate()[0], paths) for flavour, paths in wanted.items()}


def started(flavour, paths):
    command = ["java", *QUICK, "-cp", str(jar()), MAIN, "-f", flavour, "--format", "text", "-v", *map(str, paths)]
    return subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)


def read(text, paths):
    found = {}
    current = None
    for line in text.splitlines():
        verdict = re.match(r"(PASS|FAIL) (.*) \w+$", line)
        if verdict:
            current = found.setdefault(Path(verdict[2]), [])
            if verdict[1] == "FAIL":
                current.append("failed")
        elif current is not None and line.startswith(" ") and line.strip():
            current.append(" ".join(line.split())[:200])
    return {Path(path): found.get(Path(path)) for path in paths}
