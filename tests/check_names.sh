#!/usr/bin/env bash
# Where sources of a folder are compiled together (WEFTMARK_JOINED), a name in an unnamed namespace must be the
# folder's only one: not in another source's unnamed namespace, nor declared in one of the folder's headers, where
# it would be hidden without a word.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

failed=0
for folder in $(git ls-files '*.cpp' | xargs dirname | sort -u); do
    case $folder in models|vision|tests/bench|tests/fuzz) continue ;; esac  # compiled one by one
    files=$(git ls-files "$folder" | awk -v depth="$(echo "$folder/" | tr -cd / | wc -c)" \
        '/\.(cpp|h)$/ && gsub("/", "/") == depth')
    # shellcheck disable=SC2086
    twice=$(awk '
        function note(line) { if (!((line, FILENAME) in seen)) { seen[line, FILENAME]; where[line] = where[line] " " FILENAME
            count[line]++; if (FILENAME ~ /cpp$/) sources[line]++ } }
        FNR == 1 { unnamed = 0 }
        /^namespace \{/ { unnamed = 1; next }
        /^\}  \/\/ namespace$/ { unnamed = 0 }
        (unnamed || FILENAME ~ /h$/) && /^[A-Za-z_].*[ &*>][A-Za-z_]+\(/ && !/^(return|using|typedef|static_assert|TEST_CASE)/ {
            line = $0; sub(/\(.*/, "", line); sub(/.*[ &*>]/, "", line); note(line) }
        unnamed && /^constexpr .* [a-z_]+ (=|\{)/ { line = $0; sub(/ *[={].*/, "", line); sub(/.* /, "", line); note(line) }
        END { for (name in count) if (count[name] > 1 && sources[name] > 0) print "  " name ":" where[name] }' $files)
    if [ -n "$twice" ]; then
        printf 'names that hide each other in %s:\n%s\n' "$folder" "$twice"
        failed=1
    fi
done
[ "$failed" = 1 ] || echo "names are unique where sources are compiled together"
exit "$failed"
