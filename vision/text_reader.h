#pragma once

#include <string>

#include "models/reading.h"
#include "vision/enhance.h"

namespace vision {

// An engine that reads an enhanced stamp. Certainties it answers are calibrated probabilities.
class TextReader {
public:
    virtual ~TextReader() = default;

    // Short and stable, as it stands in a cell's `by`: "tesseract".
    virtual std::string name() const = 0;
    // For records: engine, version and model.
    virtual std::string version() const = 0;
    // Reads all lines of the stamp. No ink gives a reading without lines. May be called again and
    // again; not from two threads at once.
    virtual models::Reading read(const EnhancedStamp& stamp) = 0;
    // Reads a stamp known to be one line of text that fills the picture.
    virtual models::Reading readLine(const EnhancedStamp& stamp) = 0;
};

}  // namespace vision
