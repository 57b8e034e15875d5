#!/bin/sh
# Opens the kiosk on the simulated balance, after setting up what it needs. Options that follow
# go to `gramstand` and win: sh kiosk/start.sh --scale /dev/ttyUSB0 --full-screen
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/kiosk/setup.sh"
set_up kiosk
exec "$venv/bin/gramstand" --scale simulated "$@"
