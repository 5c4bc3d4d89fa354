#pragma once

#include <QString>
#include <filesystem>
#include <string>

namespace gui {

// Replaces a file as a whole: whenever the program ends, the old text or the new one is there.
//   at_once  does not wait until the disk has it; the end of the program does no harm, that of the
//            machine may bring the old text back
//   returns  what went wrong, empty when nothing did
QString replaceFile(const std::filesystem::path& file, const std::string& text, bool at_once);

}  // namespace gui
