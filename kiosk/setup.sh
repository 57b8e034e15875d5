# Set-up shared by kiosk/start.sh and tests/run.sh. Sourced by them, with $root naming the
# repository: set_up WHAT (kiosk or test) leaves a virtual environment in $venv, ready to run.

venv=${GRAMSTAND_VENV:-$root/.venv}
case $venv in /*) ;; *) venv=$PWD/$venv ;; esac
fits='sys.exit(not (3, 11) <= sys.version_info[:2] < (3, 14))'

tell() { printf '%s\n' "$*" >&2; }
stop() { tell "$*"; exit 1; }

set_up() {
    refuse_two_at_once
    ready=yes
    if ! up_to_date "$1" || ! usable "$venv/bin/python" sys; then
        ready=
        prepare_venv
    fi
    # shellcheck disable=SC2046  # one word a package
    install_packages "For its window Gramstand" $(missing_libraries)
    [ -n "$ready" ] || install_gramstand "$1"
}

refuse_two_at_once() {
    [ -e "$venv/half-made" ] || return 0
    if kill -0 "$(cat "$venv/half-made")" 2>/dev/null; then
        stop "Another set-up is at work in $venv: wait until it is done, then start this again."
    fi
    tell "The last set-up was interrupted; making $venv again."
    rm -rf "$venv"
}

# A stamp remembers where the repository lay and what pyproject.toml said at the installation.
stamp_text() { printf '%s\n' "$root" && cat "$root/pyproject.toml"; }
up_to_date() { stamp_text | cmp -s - "$venv/installed-$1" 2>/dev/null; }

# Being asked is the only proof: a version manager's shim may exist and still run nothing.
usable() { "$1" -c "import $2; $fits" </dev/null >/dev/null 2>&1; }

find_python() {
    for python in python3.13 python3.12 python3.11 python3; do
        if usable "$python" "$1"; then return 0; fi
    done
    return 1
}

choose_python() {
    if find_python sys,venv,ensurepip; then return 0; fi
    if find_python sys; then
        install_packages "To make a virtual environment $python" \
            "python$("$python" -c 'import sys; print("%d.%d" % sys.version_info[:2])')-venv"
    elif ! command -v python3 >/dev/null 2>&1 && command -v apt-get >/dev/null 2>&1; then
        install_packages "Gramstand" python3-venv
    fi
    find_python sys,venv,ensurepip || stop "Gramstand needs Python 3.11, 3.12 or 3.13 and found" \
        "none that runs: install one of them, then start this again."
}

prepare_venv() {
    [ -w "$root" ] || stop "Nothing can be written to $root:" \
        "clone the repository into a folder of your own and start it there."
    if usable "$venv/bin/python" sys,pip; then return 0; fi
    if [ -e "$venv/installed-kiosk" ]; then
        tell "The Python of $venv does not run any more; making it again."
        rm -rf "$venv"
    fi
    [ -z "$(ls -A "$venv" 2>/dev/null)" ] || stop "$venv holds other things than a virtual" \
        "environment that runs: move them away, or name another folder in GRAMSTAND_VENV."
    choose_python
    if ! mkdir -p "$venv" 2>/dev/null || [ ! -w "$venv" ]; then
        stop "Nothing can be written to $venv: name a folder of your own in GRAMSTAND_VENV."
    fi
    echo $$ >"$venv/half-made"
    tell "Making a virtual environment in $venv with $python."
    "$python" -m venv "$venv" >&2 || stop "$python could not make a virtual environment in $venv."
    rm "$venv/half-made"
}

install_gramstand() {
    tell "Installing Gramstand and what it stands on; the first time this takes a minute or two."
    echo $$ >"$venv/half-made"
    rm -f "$venv/installed-kiosk" "$venv/installed-test"
    what=.
    if [ "$1" = test ]; then what='.[test]'; fi
    failed=
    (cd "$root" && "$venv/bin/python" -m pip install --disable-pip-version-check -e "$what") \
        </dev/null >"$venv/pip.log" 2>&1 || failed=yes
    rm -f "$venv/half-made"
    [ -z "$failed" ] || stop "pip could not install what Gramstand stands on: most often there" \
        "is no way to the network; what it said stands in $venv/pip.log."
    stamp_text >"$venv/installed-kiosk"
    if [ "$1" = test ]; then stamp_text >"$venv/installed-test"; fi
}

# Kivy's wheel brings everything but the system's OpenGL; the loader knows best what is there.
missing_libraries() {
    "$venv/bin/python" - <<'END'
import ctypes, sys
for library, package in (("libGL.so.1", "libgl1"), ("libEGL.so.1", "libegl1")):
    try:
        sys.platform == "linux" and ctypes.CDLL(library)
    except OSError:
        print(package)
END
}

install_packages() {
    who=$1
    shift
    [ $# -gt 0 ] || return 0
    command -v apt-get >/dev/null 2>&1 || stop "$who needs what Debian calls $*:" \
        "install that the way your system does it, then start this again."
    as_root=
    if [ "$(id -u)" -ne 0 ]; then
        sudo -n true </dev/null >/dev/null 2>&1 || stop "$who needs $*, and only an administrator" \
            "may install that: run 'sudo apt-get install $*', then start this again."
        as_root='sudo -n'
    fi
    tell "$who needs $*; installing that with apt-get."
    $as_root apt-get update -qq </dev/null >&2 || tell "apt-get could not bring its lists up to date."
    $as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -qq -o Dpkg::Use-Pty=0 --no-install-recommends "$@" </dev/null >&2 ||
        stop "apt-get could not install $* (its own words stand above)."
}
