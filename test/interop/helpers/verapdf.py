"""veraPDF, fetched once from Maven Central, run on many files at a time."""

import os
import re
import shutil
import subprocess
from pathlib import Path

ARTIFACT = "org.verapdf.apps:greenfield-apps:1.28.1"
MAIN = "org.verapdf.apps.GreenfieldCliWrapper"


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


def verdicts(flavour, paths):
    """Path to the rules that failed, as veraPDF names them; an empty list where it passes, None where it said nothing."""
    command = ["java", "-cp", str(jar()), MAIN, "-f", flavour, "--format", "text", "-v", *map(str, paths)]
    text = subprocess.run(command, capture_output=True, text=True).stdout
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
