#!/usr/bin/env bash
# The include rules: dependencies run one way (app -> vision, models; vision -> models/reading.h only;
# models -> nothing of ours), window toolkits stay in the window, third-party types stay home.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
faults=0

# forbid WHAT PATTERN PATHS...: no #include in PATHS may match PATTERN.
forbid() {
    local what="$1" pattern="$2" found
    shift 2
    found="$(grep -rnE --include='*.h' --include='*.cpp' "^ *# *include *[<\"]($pattern)" "$@" 2>/dev/null)"
    [ -z "$found" ] && return
    printf '%s:\n%s\n' "$what" "$found"
    faults=1
}

forbid "models may know nothing of vision, app or tests" '(vision|app|tests)/' models
forbid "vision may know nothing of app or tests" '(app|tests)/' vision
vision_models="$(grep -rnE --include='*.h' --include='*.cpp' '^ *# *include *"models/' vision | grep -v '"models/reading.h"')"
[ -z "$vision_models" ] || { printf 'vision may include models/reading.h only:\n%s\n' "$vision_models"; faults=1; }
forbid "the product may not include tests" 'tests/' models vision app
forbid "pixels belong to vision and app" 'opencv2/' models
forbid "highgui would bring a second window toolkit along" 'opencv2/(highgui|opencv)' models vision app tests
forbid "Qt belongs to the archive and the app" 'Q[A-Z]|Qt' vision models/*.h models/*.cpp models/exchange
forbid "Qt stays out of the archive's headers" 'Q[A-Z]|Qt' models/archive/archive.h models/archive/records.h
forbid "flow and command line know no Widgets" 'QtWidgets|QWidget|QMainWindow' app/flow
forbid "Tesseract stays in vision/tesseract_*.cpp" 'tesseract/' $(find models vision app -name '*.h' -o -name '*.cpp' | grep -vE 'vision/tesseract_(engine|reader).cpp')
forbid "libxml2 stays in models/exchange/xml_tree.cpp" 'libxml/' $(find models vision app -name '*.h' -o -name '*.cpp' | grep -v 'models/exchange/xml_tree.cpp')
forbid "models use the standard library alone" 'nlohmann/|CLI/' models/*.h models/*.cpp models/archive/archive.h models/archive/records.h

[ "$faults" -eq 0 ] && echo "include rules hold"
exit "$faults"
