#!/bin/sh
# Passes the tests, after setting up what they need. Options that follow go to pytest; paths among
# them count from the repository: sh tests/run.sh tests/drivers -k framing
# The work is shared out over the processor's cores; -n 0 keeps it in one process.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/kiosk/setup.sh"
set_up test
cd "$root"
exec "$venv/bin/python" -m pytest -n auto "$@"
