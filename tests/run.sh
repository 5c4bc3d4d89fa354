#!/usr/bin/env bash
# Installs what is missing, builds everything, runs every test. SANITIZE=address,undefined does it with
# those sanitizers, in a build of its own. Arguments go to ctest (such as -R locate).
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
. "$root/app/install_packages.sh"

installPackages app tests
build="$root/build/release"
[ -z "${SANITIZE:-}" ] || build="$root/build/sanitize"
cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DWEFTMARK_TESTS=ON \
    -DSANITIZE="${SANITIZE:-}" >&2
cmake --build "$build" >&2
cd "$build"
export QT_QPA_PLATFORM="${QT_QPA_PLATFORM:-offscreen}"
exec ctest --output-on-failure --no-tests=error -j"$(nproc)" "$@"
