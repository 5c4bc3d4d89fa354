# Sourced by app/run.sh and tests/run.sh: installPackages SECTION... installs what packages.txt lists
# under those sections, if any of it is missing. Works as root or through sudo.

installPackages() {
    local list section wanted missing as_root=()
    list="$(dirname "${BASH_SOURCE[0]}")/packages.txt"
    wanted="$(for section in "$@"; do
        awk -v want="[$section]" '/^\[/ { on = ($0 == want); next } on && NF && !/^#/ { print $1 }' "$list"
    done)"
    missing="$(for package in $wanted; do
        dpkg-query -W -f '${db:Status-Status}\n' "$package" 2>/dev/null | grep -qx installed || echo "$package"
    done)"
    [ -z "$missing" ] && return 0
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null || {
            echo "These Debian packages are missing and there is no sudo to install them with; as root, run: apt-get install" $missing >&2
            return 1
        }
        as_root=(sudo)
    fi
    echo "Installing" $missing >&2
    "${as_root[@]}" apt-get update -q >&2 &&
        "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends $missing >&2
}
