#pragma once

#include <memory>
#include <string>
#include <vector>

#include "vision/line_crop.h"
#include "vision/text_reader.h"

namespace vision {

// Tesseract's line recogniser with its per-symbol alternatives. It first asks whether there is ink
// at all, since Tesseract reads letters into blank cloth. Each line is read from two renderings, in
// two threads; where they differ, both characters are among the alternatives.
class TesseractReader : public TextReader {
public:
    // Throws ImageError, naming the package to install, if the language data is missing.
    TesseractReader();
    ~TesseractReader() override;

    std::string name() const override;
    std::string version() const override;
    models::Reading read(const EnhancedStamp& stamp) override;
    models::Reading readLine(const EnhancedStamp& stamp) override;

private:
    models::Reading readRows(const cv::Mat& layer, const std::vector<LineRow>& rows);

    struct Engines;
    std::unique_ptr<Engines> engines_;
};

}  // namespace vision
