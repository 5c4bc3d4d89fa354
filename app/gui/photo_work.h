#pragma once

#include <cstddef>
#include <filesystem>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/flow/examine.h"
#include "app/gui/filing_fields.h"
#include "app/gui/persons_reading.h"
#include "app/gui/reading_editor.h"

namespace gui {

// One stamp on the table: where it is, what the engines made of it, what the person made of that.
struct StampWork {
    std::string id;  // of this sitting; a UUID
    vision::StampOutline outline;
    std::shared_ptr<const flow::StampExamination> examined;  // null until examined
    bool stale = false;     // the outline or what comes next has changed since
    bool mirrored = false;  // a mirror image, as ink leaves on the cloth it faced
    bool turned = false;    // the person has said which way is up
    std::string view_of;    // id of the stamp that this is another view of; empty: of its own
    models::Reading shown;  // the proposal with the person's cells in it
    // Of the rectified picture in which the extents of `shown` are; none when nobody knows.
    std::optional<cv::Matx33d> photo_from_rectified;
    std::set<CellPlace> seen;   // letters the person has been at and left
    bool gone_through = false;  // every letter once; stays true when cells come or go
    bool looked_ahead = false;  // candidates were opened before the letters were gone through
    bool read_in_view = false;  // a cell was changed while candidates were in view
};

// The stamps as the engines have them, nothing said by a person yet.
std::vector<StampWork> workFromExamination(const flow::Examination& examination);

// Letters (spaces aside) gone through, and how many there are.
struct LettersSeen {
    std::size_t seen = 0, all = 0;
};
LettersSeen lettersSeen(const StampWork& stamp);

// Cells that the person neither confirmed nor was at, and of which the reader is not sure; the one
// in hand is being looked at.
std::vector<CellPlace> notLookedAt(const StampWork& stamp, const std::string& person,
                                   std::optional<CellPlace> in_hand);

// The letters gone through as they lie after lines or cells came or went; what cannot be told
// again counts as not gone through.
std::set<CellPlace> seenAfter(const std::set<CellPlace>& seen, const models::Reading& before,
                              const models::Reading& after);

// Whether the person has changed or confirmed anything in the letters.
bool isTouched(const StampWork& stamp, const std::string& person);

// Whether the stamp belongs into a record: the person has worked on it or gone through it, or it
// is more likely a mark than not and letters were read. An outline that was only proposed is not.
bool isWorthFiling(const StampWork& stamp, const std::string& person);

// The person's reading ready to be recorded: candidates in view or not, basis, layer. Nothing
// when the person neither changed nor confirmed a cell.
std::optional<models::Reading> filedReading(const StampWork& stamp, const std::string& person,
                                            const std::string& read_at, const std::string& layer);

// Takes a new examination in: the proposal replaces what was shown unless the person has worked
// on the letters; then their cells stay, moved to where the same letters stand now.
void takeExamination(StampWork& stamp, std::shared_ptr<const flow::StampExamination> examined,
                     const std::string& person);

// Cell extents and line boxes moved from one rectified picture of a stamp to another.
models::Reading movedReading(const models::Reading& reading,
                             const cv::Matx33d& photo_from_old_rectified,
                             const cv::Matx33d& photo_from_new_rectified);

}  // namespace gui
