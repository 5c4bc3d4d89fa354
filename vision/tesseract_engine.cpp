#include "vision/tesseract_engine.h"

#include <algorithm>

#include <omp.h>
#include <tesseract/baseapi.h>

#include "vision/image_error.h"

namespace vision {

namespace {

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
        symbol.left_px = crop.rectifiedX(left);
        symbol.right_px = crop.rectifiedX(right);
    }
    symbol.starts_word = at.IsAtBeginningOf(tesseract::RIL_WORD);
    return symbol;
}

}  // namespace

struct TesseractEngine::Api {
    tesseract::TessBaseAPI engine;
};

TesseractEngine::TesseractEngine() : api_(std::make_unique<Api>())
{
    // One line is too small to share between threads: left alone, Tesseract spends its time
    // waiting.
    omp_set_max_active_levels(0);
    tesseract::TessBaseAPI& api = api_->engine;
    const std::vector<std::string> names{"debug_file"}, values{"/dev/null"};
    if (api.Init(nullptr, "eng", tesseract::OEM_LSTM_ONLY, nullptr, 0, &names, &values, false) != 0)
        throw ImageError(
            "Tesseract's language data eng.traineddata is missing: install the package "
            "tesseract-ocr-eng");
    api.SetPageSegMode(tesseract::PSM_SINGLE_LINE);
    api.SetVariable("lstm_choice_mode", "2");
}

TesseractEngine::~TesseractEngine() = default;

std::string TesseractEngine::version()
{
    return std::string("tesseract ") + tesseract::TessBaseAPI::Version() + " eng lstm";
}

std::vector<RawSymbol> TesseractEngine::recognise(const LineCrop& crop)
{
    tesseract::TessBaseAPI& api = api_->engine;
    const cv::Mat grey = crop.grey.isContinuous() ? crop.grey : crop.grey.clone();
    api.SetImage(grey.data, grey.cols, grey.rows, 1, static_cast<int>(grey.step));
    api.SetSourceResolution(300);
    std::vector<RawSymbol> symbols;
    if (api.Recognize(nullptr) == 0) {
        const std::unique_ptr<tesseract::ResultIterator> at(api.GetIterator());
        if (at && !at->Empty(tesseract::RIL_SYMBOL)) {
            do {
                RawSymbol symbol = symbolAt(*at, crop);
                if (!symbol.text.empty() && symbol.text != " ")
                    symbols.push_back(std::move(symbol));
            } while (at->Next(tesseract::RIL_SYMBOL));
        }
    }
    api.Clear();
    // Otherwise words read before would sway what is read next.
    api.ClearAdaptiveClassifier();
    return symbols;
}

}  // namespace vision
