#pragma once

#include <QImage>
#include <memory>
#include <string>
#include <vector>

#include "app/gui/examiner.h"

namespace gui {

// An examination kept small, for photos that are read before they are opened: what was found and
// read, without the pixels, which are loaded again (much quicker than reading).
struct ReadAhead {
    std::string photo_sha256;
    std::vector<std::string> warnings;
    std::vector<flow::StampExamination> stamps;  // without layers, but with their frames
};

ReadAhead withoutPixels(const flow::Examination& examination);

// The photo loaded and the layers made again; what was read is moved to where it stands in them.
//   returns  nothing when the file has changed since
std::shared_ptr<const flow::Examination> withPixels(const ReadAhead& ahead,
                                                    const std::filesystem::path& file,
                                                    const Examiner& examiner);

// A photo as it is laid on the table.
struct OpenedPhoto {
    std::shared_ptr<const flow::Examination> examination;
    QImage card;  // a small picture of the whole
};
OpenedPhoto opened(std::shared_ptr<const flow::Examination> examination);

}  // namespace gui
