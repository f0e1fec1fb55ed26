"""Asks the compiled library: a list of requests in, a list of answers out."""

import json
import subprocess
from pathlib import Path


def ask(requests):
    program = Path(__file__).parent.parent / "lens-answers.mjs"
    run = subprocess.run(["node", str(program)], input=json.dumps(requests), check=True, capture_output=True, text=True)
    return json.loads(run.stdout)
