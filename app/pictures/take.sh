#!/usr/bin/env bash
# Takes the pictures of this folder from the running program, on a screen of its own:
#   bash app/pictures/take.sh [FOLDER]      else this folder; needs xvfb, xdotool and imagemagick
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
out="$(realpath "${1:-$root/app/pictures}")"
weftmark="$root/build/release/app/cli/weftmark"
samples="$root/sample_images"
work="$(mktemp -d)"
export DISPLAY=":$((90 + RANDOM % 9))" QT_QPA_PLATFORM=xcb XDG_RUNTIME_DIR="$work" LC_ALL=C.UTF-8
Xvfb "$DISPLAY" -screen 0 1280x820x24 >"$work/screen.log" 2>&1 &
screen=$!
window=0
trap 'kill $window $screen 2>/dev/null || true; rm -rf "$work"' EXIT
sleep 2

# Opens the window on these photos and waits until it stands still.
open() {
    rm -rf "$work/archive"
    "$weftmark" window --archive "$work/archive" --author "Maud Pell" "$@" >"$work/window.log" 2>&1 &
    window=$!
    xdotool search --sync --onlyvisible --name Weftmark windowsize --sync 1280 820 windowmove 0 0 windowfocus --sync
    stand_still 5
}

# Until two pictures in a row, a second apart, are the same, and so many seconds at least.
stand_still() {
    sleep "$1"
    for _ in $(seq 60); do
        import -window root "$work/one.png"
        sleep 1
        import -window root "$work/other.png"
        cmp -s <(convert "$work/one.png" rgb:-) <(convert "$work/other.png" rgb:-) && return 0
    done
}

keys() { for key in "$@"; do xdotool key "$key"; sleep 0.15; done; }

# Quantised, so that the folder stays small.
picture() { stand_still 1; import -window root +dither -colors 192 -define png:compression-level=9 "$out/$1.png"; }

close() { kill $window; wait $window 2>/dev/null || true; }

open
picture empty
close

open "$samples/easy/satchel_flap.jpg"
keys shift+Return
picture easy
close

# The record of a piece with a stamp on its body and another on a fitting.
open "$samples/medium/belt_fitting.jpg"
keys shift+Return shift+Return ctrl+Right
stand_still 1
keys shift+Return shift+Return ctrl+s
xdotool type --delay 60 "SHT.1940.7"
keys Tab b Down Tab
xdotool type --delay 60 "Saltmere Harbour Trust"
keys alt+h ctrl+Home Down Home Right a Down p Down Down p  # the details: absent, present
keys Down Down a Down i i Down Down t Down i  # stamp 1 on a fitting, impressed; 2 on the body, ink
keys Down Down Down Home
xdotool type --delay 60 "length"
keys Tab
xdotool type --delay 60 "914 mm"
keys Return ctrl+Home Down Home Right
picture record
close

open "$samples/hard/satchel_unknown.jpg"
keys F4 ctrl+Down ctrl+Down
picture hard
close

open "$samples/medium/carrier_hem.jpg"
keys shift+Return shift+Return
stand_still 2
keys F11
picture candidates
close

open "$samples"/easy "$samples"/medium
stand_still 20
keys shift+Return shift+Return F10
picture to_read
close

open "$samples/medium/strap_inspected.jpg"
keys shift+Return ctrl+d ctrl+t
picture dark
close
