#include "tests/bench/contestant.h"

#include <algorithm>
#include <sstream>
#include <stdexcept>

#include <leptonica/allheaders.h>
#include <omp.h>
#include <tesseract/baseapi.h>
#include <opencv2/imgproc.hpp>

#include "vision/line_reader.h"
#include "vision/tesseract_reader.h"

namespace bench {

namespace {

class Weftmark : public Contestant {
public:
    explicit Weftmark(flow::Engines engines) : engines_(std::move(engines)) {}

    ReadPicture read(const vision::Photo& photo, bool single_line) override
    {
        return readMarks(photo, engines_, single_line);
    }

private:
    flow::Engines engines_;
};

std::unique_ptr<vision::TextReader> readerNamed(const std::string& name)
{
    if (name == "tesseract")
        return std::make_unique<vision::TesseractReader>();
    if (name == "line-reader")
        return std::make_unique<vision::LineReader>(flow::weightsFolder());
    throw std::invalid_argument("there is no reader '" + name +
                                "': known are line-reader and tesseract");
}

std::vector<std::string> partsOf(const std::string& text, char separator)
{
    std::vector<std::string> parts;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, separator);)
        parts.push_back(part);
    return parts;
}

class PlainTesseract : public Contestant {
public:
    PlainTesseract(tesseract::PageSegMode mode, const std::filesystem::path& register_folder)
        : known_(models::loadRegister(register_folder))
    {
        // A thread for each picture is faster than several for one.
        omp_set_max_active_levels(0);
        if (engine_.Init(nullptr, "eng", tesseract::OEM_LSTM_ONLY) != 0)
            throw std::runtime_error(
                "Tesseract's language data is missing: install the package tesseract-ocr-eng");
        engine_.SetVariable("debug_file", "/dev/null");
        setMsgSeverity(L_SEVERITY_NONE);
        engine_.SetPageSegMode(mode);
    }

    ReadPicture read(const vision::Photo& photo, bool single_line) override;

private:
    tesseract::TessBaseAPI engine_;
    models::MakerRegister known_;
};

vision::Quad boxOf(const tesseract::ResultIterator& at, tesseract::PageIteratorLevel level)
{
    int left = 0, top = 0, right = 0, bottom = 0;
    at.BoundingBox(level, &left, &top, &right, &bottom);
    const auto x0 = static_cast<float>(left), y0 = static_cast<float>(top);
    const auto x1 = static_cast<float>(right), y1 = static_cast<float>(bottom);
    return {{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}};
}

double confidenceOf(const tesseract::ResultIterator& at, tesseract::PageIteratorLevel level)
{
    return std::clamp(at.Confidence(level) / 100.0, 0.0, 1.0);
}

void addSymbol(ReadPicture& read, const tesseract::ResultIterator& at)
{
    if (at.IsAtBeginningOf(tesseract::RIL_TEXTLINE)) {
        read.lines.push_back({{}, boxOf(at, tesseract::RIL_TEXTLINE)});
        read.lines.back().line.certainty = confidenceOf(at, tesseract::RIL_TEXTLINE);
    }
    if (read.lines.empty())
        return;
    std::vector<models::Cell>& cells = read.lines.back().line.cells;
    if (at.IsAtBeginningOf(tesseract::RIL_WORD) && !cells.empty())
        cells.push_back(models::clearCell(" "));
    const std::unique_ptr<char[]> text(at.GetUTF8Text(tesseract::RIL_SYMBOL));
    if (!text || *text.get() == '\0' || *text.get() == ' ')
        return;
    models::Cell cell = models::clearCell(text.get());
    cell.alternatives.front().certainty = confidenceOf(at, tesseract::RIL_SYMBOL);
    cell.by = "tesseract";
    cells.push_back(std::move(cell));
}

ReadPicture PlainTesseract::read(const vision::Photo& photo, bool)
{
    cv::Mat grey;
    cv::cvtColor(photo.pixels, grey, cv::COLOR_BGR2GRAY);
    engine_.SetImage(grey.data, grey.cols, grey.rows, 1, static_cast<int>(grey.step));
    engine_.SetSourceResolution(300);
    ReadPicture read;
    if (engine_.Recognize(nullptr) == 0) {
        const std::unique_ptr<tesseract::ResultIterator> at(engine_.GetIterator());
        if (at && !at->Empty(tesseract::RIL_SYMBOL)) {
            do
                addSymbol(read, *at);
            while (at->Next(tesseract::RIL_SYMBOL));
        }
    }
    engine_.Clear();
    engine_.ClearAdaptiveClassifier();  // or pictures before would sway those after
    std::erase_if(read.lines, [](const ReadLine& line) { return line.line.cells.empty(); });
    models::Reading reading;
    for (const ReadLine& line : read.lines)
        reading.lines.push_back(line.line);
    read.candidates = flow::rankReadings({reading}, known_, {});
    return read;
}

}  // namespace

Entry weftmark(const std::string& readers, const std::filesystem::path& register_folder)
{
    const std::vector<std::string> names = partsOf(readers, '+');
    if (names.empty())
        throw std::invalid_argument("name at least one reader");
    for (const std::string& name : names)
        readerNamed(name);
    const auto make = [names, register_folder]() -> std::unique_ptr<Contestant> {
        flow::Engines engines = flow::makeEngines(register_folder);  // finds as the program does
        engines.readers.clear();
        for (const std::string& name : names)
            engines.readers.push_back(readerNamed(name));
        return std::make_unique<Weftmark>(std::move(engines));
    };
    return {"Weftmark (" + readers + ")", make};
}

std::vector<Entry> plainTesseract(const std::filesystem::path& register_folder, bool all_modes)
{
    const auto entry = [&](const std::string& mode_name, tesseract::PageSegMode mode) {
        const auto make = [mode, register_folder]() -> std::unique_ptr<Contestant> {
            return std::make_unique<PlainTesseract>(mode, register_folder);
        };
        const bool line = mode == tesseract::PSM_SINGLE_LINE;
        return Entry{"plain Tesseract (" + mode_name + ")", make, false, line, !line};
    };
    std::vector<Entry> entries{entry("page", tesseract::PSM_AUTO),
                               entry("sparse text", tesseract::PSM_SPARSE_TEXT),
                               entry("one line", tesseract::PSM_SINGLE_LINE)};
    if (all_modes)
        entries.push_back(entry("block", tesseract::PSM_SINGLE_BLOCK));
    return entries;
}

}  // namespace bench
