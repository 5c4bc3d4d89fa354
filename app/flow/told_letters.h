#pragma once

#include <vector>

#include "app/flow/examine.h"
#include "models/reading.h"

namespace flow {

// What is left of readings and stamps once it is known which letters can be told.

// Without lines that hold no cell. A line of one speck beside lines of letters is none either;
// beside nothing else it may be all that is left of a mark.
models::Reading withoutEmptyLines(models::Reading reading);

// A seam or a fold has something of a worn mark: beside marks that can be read, what holds no
// letter that can be told needs the finder's full certainty to be shown as one.
void dropUntold(std::vector<StampExamination>& stamps);

// A letter or two are read into an eyelet or a fold too; of so short a line it counts how likely
// there is a mark at all.
//   mark_probability  0 to 1; certainties of lines of one or two letters, and of these, are
//                     multiplied by it
void weighShortLines(models::Reading& reading, double mark_probability);

// Says that lines are cut off where they run out of the photo: they may go on there.
void tellCutEnds(models::Reading& reading, const vision::RectifiedStamp& stamp,
                 const cv::Size& photo_px);

}  // namespace flow
