#pragma once

#include <filesystem>

#include "vision/line_crop.h"
#include "vision/line_network.h"
#include "vision/text_reader.h"

namespace vision {

// The network made for faint marks: reads a line at a time, says of a letter that cannot be told
// that traces stand there, and of one that is gone that it is lost.
class LineReader : public TextReader {
public:
    // Throws WeightsError if the folder's weights cannot be used.
    explicit LineReader(const std::filesystem::path& weights_folder, DecodeOptions options = {});

    std::string name() const override { return "line-reader"; }
    std::string version() const override;
    models::Reading read(const EnhancedStamp& stamp) override;
    models::Reading readLine(const EnhancedStamp& stamp) override;

    // What the network makes of one row, before it becomes cells; for benches.
    struct SeenRow {
        LineCrop crop;
        cv::Mat log_shares;  // as decodeLine takes them
        DecodedLine decoded;
    };
    //   ends_known  the row was found: what the crop shows beyond its ends is not of this line
    SeenRow look(const EnhancedStamp& stamp, const LineRow& row, bool ends_known = true);
    const LineClasses& classes() const { return network_.classes(); }
    const WritingModel& writing() const { return writing_; }

private:
    models::Reading readRows(const EnhancedStamp& stamp, const std::vector<LineRow>& rows,
                             bool ends_known);

    LineNetwork network_;
    WritingModel writing_;
    DecodeOptions options_;
};

}  // namespace vision
