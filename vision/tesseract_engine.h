#pragma once

#include <memory>
#include <string>
#include <vector>

#include "vision/line_crop.h"
#include "vision/raw_symbol.h"

namespace vision {

// Tesseract's line network (LSTM, language eng), kept loaded. Not for two threads at once.
class TesseractEngine {
public:
    // Throws ImageError, naming the package to install, if the language data is missing.
    TesseractEngine();
    ~TesseractEngine();

    // Tesseract's version and model, for records.
    static std::string version();

    // Reads a crop of one line; extents are in the pixels the crop was cut from.
    //   returns  symbols from left to right, empty when nothing was read
    std::vector<RawSymbol> recognise(const LineCrop& crop);

private:
    struct Api;
    std::unique_ptr<Api> api_;
};

}  // namespace vision
