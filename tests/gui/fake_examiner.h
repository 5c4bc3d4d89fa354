#pragma once

#include <atomic>
#include <filesystem>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "app/gui/examiner.h"

namespace gui_tests {

// What a made-up examiner is told to do, and what was asked of it. Shared with its thread.
struct FakeScript {
    std::atomic<bool> hold{false};  // examinations wait until it is off, or a stop is asked for
    std::atomic<bool> turns_over{false};  // a stamp read again is found upside down, unless kept
    std::atomic<int> photos_examined{0}, stamps_examined{0}, rankings{0};
    std::atomic<int> photos_done{0}, stamps_begun{0};
    std::atomic<int> stopped{0};  // examinations that ended by a stop
    double certainty = 0.8;       // of every letter; of a question mark 0.5
    std::vector<std::vector<std::string>> stamps{{"HART LTD", "1938"}};  // lines read, a stamp each

    std::mutex guard;  // of what follows
    std::vector<vision::StampOutline> outlines_seen;
    std::vector<std::string> types_ranked;  // item types, one a request
    std::vector<std::string> texts_ranked;  // all lines of a request joined by " / "
};

// Loads photos as the program does, "finds" the script's stamps one below the other, and "reads"
// its letters, each 40 px wide and 60 px high. Ranks two makers: the first is likelier the more
// the readings say HART.
gui::MakeExaminer fakeExaminer(std::shared_ptr<FakeScript> script);

// A picture for it: 640 x 480, letters drawn where the examiner says they stand.
std::filesystem::path drawPhoto(const std::filesystem::path& folder, const std::string& name,
                                const std::vector<std::vector<std::string>>& stamps = {
                                    {"HART LTD", "1938"}});

// So many of them in a folder of their own, photo0.png and on, and a file that is no picture.
std::filesystem::path drawFolder(const std::filesystem::path& in, int count);

// A file that is named as a photo, letter.jpg, and is none.
std::filesystem::path writeLetter(const std::filesystem::path& folder);

}  // namespace gui_tests
