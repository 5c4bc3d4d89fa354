#!/usr/bin/env bash
# Installs what is missing, builds, and does the main job: on the samples, or on the photographs given.
# With a display it opens the window on them; without one it reads them and prints what it finds.
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
. "$root/app/install_packages.sh"

installPackages app
build="$root/build/release"
[ -f "$build/CMakeCache.txt" ] ||
    cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DWEFTMARK_TESTS=OFF >&2
cmake --build "$build" --target weftmark >&2
weftmark="$build/app/cli/weftmark"

[ $# -gt 0 ] || set -- "$root"/sample_images/*/*.jpg
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    status=0
    "$weftmark" window "$@" || status=$?
    [ "$status" -eq 2 ] || exit "$status"  # 2: the display that the environment names cannot be used
fi
exec "$weftmark" read "$@"
