#include "tests/exchange/random_tei.h"

#include <utility>

#include "tests/models/random_reading.h"

namespace {

int drawUpTo(std::mt19937& random, int most)
{
    return std::uniform_int_distribution<int>(0, most)(random);
}

bool luckyOneIn(std::mt19937& random, int n)
{
    return drawUpTo(random, n - 1) == 0;
}

double anyShare(std::mt19937& random)
{
    constexpr double usual[] = {0, 0.3, 0.6, 1};
    if (luckyOneIn(random, 3))
        return usual[drawUpTo(random, 3)];
    return std::uniform_real_distribution<double>(0, 1)(random);
}

double anyPixel(std::mt19937& random)
{
    return std::uniform_real_distribution<double>(-5, 2000)(random);
}

// Names and letters that XML, URIs and lists of words could stumble over.
std::string oddText(std::mt19937& random)
{
    static const std::vector<std::string> texts = {
        "",         "tesseract", "A. Person", "a&b<c>\"d'", "\xC3\x89mile %41/,", "]]>",
        "\r\n\t x", "AB",        "E\xCC\x81", "\xCC\x81",   "\xE2\x86\x91",       "\xEF\xBF\xBD"};
    return texts[static_cast<std::size_t>(drawUpTo(random, static_cast<int>(texts.size()) - 1))];
}

void addDetails(std::mt19937& random, models::Cell& cell)
{
    const bool unread =
        cell.state == models::CellState::Traces || cell.state == models::CellState::Lost;
    for (models::Alternative& alternative : cell.alternatives) {
        alternative.certainty = unread || luckyOneIn(random, 2) ? anyShare(random) : 1;
        if (luckyOneIn(random, 15))
            alternative.text = oddText(random);
    }
    if (!unread && luckyOneIn(random, 20))
        cell.alternatives.clear();
    if (cell.state == models::CellState::Clear && luckyOneIn(random, 6))
        cell.alternatives.push_back({"Z", anyShare(random)});
    if (luckyOneIn(random, 3)) {
        cell.left_px = anyPixel(random);
        cell.right_px = anyPixel(random);
    }
    if (luckyOneIn(random, 3))
        cell.by = oddText(random);
    if (unread && luckyOneIn(random, 10))
        cell.about = !cell.about;
}

void addDetails(std::mt19937& random, models::Line& line)
{
    for (models::Cell& cell : line.cells)
        addDetails(random, cell);
    if (luckyOneIn(random, 3))
        line.box_px = {anyPixel(random), anyPixel(random), anyPixel(random), anyPixel(random)};
    if (luckyOneIn(random, 3))
        line.certainty = anyShare(random);
    for (int i = drawUpTo(random, 5) - 3; i > 0; --i)
        line.spans.push_back({.first_cell = static_cast<std::size_t>(drawUpTo(random, 9)),
                              .end_cell = static_cast<std::size_t>(drawUpTo(random, 9)),
                              .role = static_cast<models::LineRole>(drawUpTo(random, 9)),
                              .probability = anyShare(random)});
}

}  // namespace

models::Reading randomReading(std::mt19937& random)
{
    models::Reading reading;
    reading.lines = randomLines(random);
    for (models::Line& line : reading.lines)
        addDetails(random, line);
    reading.reader = oddText(random);
    reading.basis = static_cast<models::Basis>(drawUpTo(random, 3));
    reading.read_at = luckyOneIn(random, 2) ? "1956-03-01T12:00:00Z" : "";
    if (luckyOneIn(random, 2))
        reading.candidates_were_shown = luckyOneIn(random, 2);
    reading.layer = oddText(random);
    reading.options = oddText(random);
    reading.weights_sha256 = oddText(random);
    return reading;
}

models::TeiDocument madeUpDocument(models::Reading reading)
{
    models::TeiDocument document;
    document.title = "Strap <1> & \"more\"";
    document.repository = "Made-up archive";
    document.idno = "0001";
    document.text.reading = std::move(reading);
    return document;
}
