#include "vision/tesseract_reader.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <vector>

#include <omp.h>
#include <tesseract/baseapi.h>

#include "vision/image_error.h"
#include "vision/line_certainty.h"
#include "vision/line_crop.h"
#include "vision/text_rows.h"

namespace vision {

namespace {

constexpr double letter_px = 34;  // height Tesseract's network reads best, margins apart
constexpr double rim = 0.35;      // of the letter height

std::string takeText(char* text)
{
    if (text == nullptr)
        return {};
    std::string copy(text);
    delete[] text;
    return copy;
}

// Other characters Tesseract held possible, best first, the chosen one left out.
std::vector<models::Alternative> rivals(const tesseract::ResultIterator& symbol,
                                        const std::string& chosen)
{
    std::vector<models::Alternative> found;
    tesseract::ChoiceIterator choice(symbol);
    do {
        const char* text = choice.GetUTF8Text();
        const double score = std::clamp(choice.Confidence() / 100.0, 0.0, 1.0);
        if (text == nullptr || *text == '\0' || text == chosen || score < 0.005)
            continue;
        const bool known = std::any_of(found.begin(), found.end(),
                                       [&](const auto& other) { return other.text == text; });
        if (!known)
            found.push_back({text, score});
    } while (choice.Next());
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.certainty > b.certainty; });
    if (found.size() > 5)
        found.resize(5);
    return found;
}

RawSymbol symbolAt(const tesseract::ResultIterator& at, const LineCrop& crop)
{
    RawSymbol symbol;
    symbol.text = takeText(at.GetUTF8Text(tesseract::RIL_SYMBOL));
    symbol.score = std::clamp(at.Confidence(tesseract::RIL_SYMBOL) / 100.0, 0.0, 1.0);
    symbol.rivals = rivals(at, symbol.text);
    int left = 0, top = 0, right = 0, bottom = 0;
    if (at.BoundingBox(tesseract::RIL_SYMBOL, &left, &top, &right, &bottom)) {
        symbol.left_px = crop.origin.x + left / crop.scale;
        symbol.right_px = crop.origin.x + right / crop.scale;
    }
    symbol.starts_word = at.IsAtBeginningOf(tesseract::RIL_WORD);
    return symbol;
}

std::vector<RawSymbol> recognise(tesseract::TessBaseAPI& engine, const LineCrop& crop)
{
    const cv::Mat grey = crop.grey.isContinuous() ? crop.grey : crop.grey.clone();
    engine.SetImage(grey.data, grey.cols, grey.rows, 1, static_cast<int>(grey.step));
    engine.SetSourceResolution(300);
    std::vector<RawSymbol> symbols;
    if (engine.Recognize(nullptr) == 0) {
        const std::unique_ptr<tesseract::ResultIterator> at(engine.GetIterator());
        if (at && !at->Empty(tesseract::RIL_SYMBOL)) {
            do {
                RawSymbol symbol = symbolAt(*at, crop);
                if (!symbol.text.empty() && symbol.text != " ")
                    symbols.push_back(std::move(symbol));
            } while (at->Next(tesseract::RIL_SYMBOL));
        }
    }
    engine.Clear();
    return symbols;
}

}  // namespace

struct TesseractReader::Engines {
    tesseract::TessBaseAPI api;
};

TesseractReader::TesseractReader() : engines_(std::make_unique<Engines>())
{
    // One line is too small to share between threads: left alone, Tesseract spends its time
    // waiting.
    omp_set_max_active_levels(0);
    tesseract::TessBaseAPI& api = engines_->api;
    const std::vector<std::string> names{"debug_file"}, values{"/dev/null"};
    if (api.Init(nullptr, "eng", tesseract::OEM_LSTM_ONLY, nullptr, 0, &names, &values, false) != 0)
        throw ImageError(
            "Tesseract's language data eng.traineddata is missing: install the package "
            "tesseract-ocr-eng");
    api.SetPageSegMode(tesseract::PSM_SINGLE_LINE);
    api.SetVariable("lstm_choice_mode", "2");
}

TesseractReader::~TesseractReader() = default;

std::string TesseractReader::name() const
{
    return "tesseract";
}

std::string TesseractReader::version() const
{
    return std::string("tesseract ") + tesseract::TessBaseAPI::Version() + " eng lstm";
}

models::Reading TesseractReader::read(const EnhancedStamp& stamp)
{
    std::vector<cv::Rect2d> rows = stamp.rectified.lines;
    if (rows.empty())
        rows = findTextRows(stamp.layer("flat"));
    models::Reading reading;
    reading.reader = version();
    reading.basis = models::Basis::Photo;
    reading.layer = "flat";
    for (const cv::Rect2d& row : rows) {
        const cv::Mat& layer = stamp.layer("flat");
        const InkEvidence ink = measureInk(layer, row);
        if (!inkStands(ink))
            continue;
        const LineCrop crop = cropLine(layer, row, letter_px, rim);
        reading.lines.push_back(lineFrom(recognise(engines_->api, crop), row, ink, name()));
    }
    return reading;
}

models::Reading TesseractReader::readLine(const EnhancedStamp& stamp)
{
    EnhancedStamp single = stamp;
    if (single.rectified.lines.empty()) {
        const cv::Mat& flat = stamp.layer("flat");
        std::vector<cv::Rect2d> rows = findTextRows(flat);
        if (rows.empty())
            rows.emplace_back(0, 0.15 * flat.rows, flat.cols, 0.7 * flat.rows);
        const auto tallest =
            std::max_element(rows.begin(), rows.end(),
                             [](const auto& a, const auto& b) { return a.area() < b.area(); });
        single.rectified.lines = {*tallest};
    }
    return read(single);
}

}  // namespace vision
