// Fits the weights behind the certainties and prints how far they can be trusted.
//   calibration chains|lines|network|finder [--drawn N] [--marks N] [--levels N] [--seed S]
//               [FOLDER ...]
// chains: is a chain of letter pieces a line of text (vision/chain_score.cpp)?
// lines: is a line, is a cell read right by Tesseract (vision/line_certainty.cpp)?
// network: the same by the line network (vision/network_cells.cpp)
// finder: is what the finder network takes for a line one (vision/finder_lines.cpp)?
// On N drawn scenes (40) in three wears and bare, on N drawn marks (0) in five contrasts, on N
// photographs (0) of each sample level and bare, and on the pictures of the folders (see
// labelled_photos.h). Reliability is cross-fitted: no photo judges itself.

#include <algorithm>
#include <cmath>
#include <functional>
#include <iostream>
#include <string>

#include <opencv2/imgproc.hpp>

#include "models/letters.h"
#include "tests/bench/finder_samples.h"
#include "tests/bench/labelled_photos.h"
#include "tests/bench/logistic_fit.h"
#include "tests/bench/read_marks.h"
#include "vision/chain_score.h"
#include "vision/finder_lines.h"
#include "vision/line_certainty.h"
#include "vision/line_reader.h"
#include "vision/network_cells.h"
#include "vision/rectify.h"
#include "vision/stamp_finder.h"
#include "vision/symbol_alignment.h"
#include "vision/tesseract_lines.h"

namespace {

using bench::LabelledPhoto;
using bench::Sample;

struct Settings {
    std::string what;
    int drawn = 40, marks = 0, levels = 0;
    std::uint32_t seed = 70000;
    std::vector<std::filesystem::path> folders;
};

void eachPhoto(const Settings& settings, const bench::PhotoTask& task)
{
    bench::eachDrawnPhoto(settings.seed, settings.drawn, task);
    bench::eachOtherMark(settings.seed, settings.marks, task);
    bench::eachLevelPhoto(settings.seed, settings.levels, task);
    for (const auto& folder : settings.folders)
        bench::eachPhotoOf(folder, task);
}

void report(const std::string& title, const vision::LogisticModel& model,
            const std::vector<Sample>& samples, double ridge)
{
    const auto right =
        std::count_if(samples.begin(), samples.end(), [](const Sample& s) { return s.right; });
    std::cout << title << ": " << samples.size() << ", right " << right << '\n';
    bench::printReliability(samples, bench::crossFitted(samples, ridge));
    std::vector<std::string> names;
    for (const auto& term : model.terms)
        names.push_back(term.name);
    bench::printWeights(names, bench::fitLogistic(samples, ridge));
}

void addChains(const LabelledPhoto& labelled, int group, std::vector<Sample>& samples)
{
    cv::Mat grey;
    cv::cvtColor(labelled.photo.pixels, grey, cv::COLOR_BGR2GRAY);
    const auto pieces = vision::findLetterPieces(grey);
    const vision::PieceGrid grid(pieces);
    for (const vision::LetterChain& chain : vision::chainLetters(pieces)) {
        double best = 0;
        for (const bench::LabelledLine& line : labelled.lines)
            best = std::max(best, bench::overlapOf(chain.corners, line.corners));
        if (best > 0.1 && best < 0.55)
            continue;  // part of a line: neither right nor wrong
        samples.push_back(
            {vision::termsOf(vision::traitsOf(chain, pieces, grid)), best >= 0.55, group});
    }
}

struct LineSamples {
    std::vector<Sample> lines, cells;
};

std::string textOf(const std::vector<vision::RawSymbol>& symbols)
{
    std::string text;
    for (const vision::RawSymbol& symbol : symbols)
        text += (symbol.starts_word && !text.empty() ? " " : "") + symbol.text;
    return bench::folded(text);
}

std::vector<vision::RawSymbol> symbolsOf(const std::string& text)
{
    std::vector<vision::RawSymbol> symbols;
    for (const char c : bench::folded(text))
        if (c != ' ')
            symbols.push_back({std::string(1, c), 1, {}, 0, 0, false});
    return symbols;
}

// `truth` is empty when no line stands there this way up.
void addLine(const vision::LineReadings& readings, const std::string& truth, int group,
             LineSamples& samples)
{
    if (readings.chosen.empty())
        return;
    const bool right = !truth.empty() && textOf(readings.chosen) == bench::folded(truth);
    samples.lines.push_back({vision::termsOf(vision::lineTraits(readings)), right, group});
    std::vector<vision::RawSymbol> folded = readings.chosen;
    for (vision::RawSymbol& symbol : folded)
        symbol.text = bench::folded(symbol.text);
    const auto wanted = symbolsOf(truth);
    const std::vector<int> partner = vision::alignSymbols(folded, wanted);
    const auto cells = vision::cellTraits(readings);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const bool same =
            partner[i] >= 0 && wanted[static_cast<std::size_t>(partner[i])].text == folded[i].text;
        samples.cells.push_back({vision::termsOf(cells[i]), same, group});
    }
}

bool runsWith(const vision::Quad& a, const vision::Quad& b)
{
    return (a[1] - a[0]).dot(b[1] - b[0]) > 0;
}

// Both ways up of all stamps found, with the line that stands in a row; an empty text where none
// does.
using RowTask = std::function<void(const vision::EnhancedStamp&, const vision::LineRow& row,
                                   const std::string& truth)>;

std::string textIn(const LabelledPhoto& labelled, const vision::RectifiedStamp& stamp,
                   const cv::Rect2d& box)
{
    const cv::Point2d corners[] = {
        box.tl(), {box.x + box.width, box.y}, box.br(), {box.x, box.y + box.height}};
    vision::Quad quad;
    for (std::size_t i = 0; i < 4; ++i)
        quad[i] = vision::photoFromRectified(stamp, corners[i]);
    std::string truth;
    for (const bench::LabelledLine& line : labelled.lines)
        if (bench::overlapOf(quad, line.corners) > 0.3 && runsWith(quad, line.corners))
            truth = line.text;
    return truth;
}

void eachRow(const LabelledPhoto& labelled, vision::StampFinder& finder, const RowTask& task)
{
    for (const vision::StampOutline& outline : finder.find(labelled.photo)) {
        const vision::RectifiedStamp rectified = vision::rectifyStamp(labelled.photo, outline);
        for (const auto& stamp : {rectified, vision::turnedOver(rectified)}) {
            const vision::EnhancedStamp enhanced = vision::enhanceStamp(stamp);
            for (const vision::LineRow& row : vision::rowsOf(stamp))
                task(enhanced, row, textIn(labelled, stamp, row.box));
        }
    }
}

void addLines(const LabelledPhoto& labelled, int group, vision::TesseractLines& reader,
              LineSamples& samples)
{
    vision::StampFinder finder;  // Tesseract stands in where there are no networks
    eachRow(labelled, finder, [&](const auto& stamp, const auto& row, const std::string& truth) {
        for (const vision::LineReadings& readings : reader.read(stamp.layer("flat"), {row}))
            addLine(readings, truth, group, samples);
    });
}

// What the network's best guess is, a symbol a place; traces and lost as a sign no text holds.
std::vector<vision::RawSymbol> symbolsOf(const vision::DecodedLine& line,
                                         const vision::LineClasses& classes)
{
    std::vector<vision::RawSymbol> symbols;
    for (const vision::DecodedPlace& place : line.places) {
        const int best = place.shares.empty() ? 0 : place.shares.front().of_class;
        const std::string text = classes.isCharacter(best)
                                     ? classes.characters[static_cast<std::size_t>(best) - 1]
                                     : "\x01";
        symbols.push_back({text == " " ? text : bench::folded(text), 1, {}, 0, 0, false});
    }
    return symbols;
}

void addNetworkLine(const vision::LineReader::SeenRow& row, const vision::LineClasses& classes,
                    const std::string& truth, int group, LineSamples& samples)
{
    const vision::DecodedLine& line = row.decoded;
    if (line.places.empty())
        return;
    const std::vector<vision::RawSymbol> seen = symbolsOf(line, classes);
    std::vector<vision::RawSymbol> wanted;
    for (const std::string& character : models::charactersOf(bench::folded(truth)))
        wanted.push_back({character, 1, {}, 0, 0, false});
    const bool right = seen.size() == wanted.size() &&
                       std::equal(seen.begin(), seen.end(), wanted.begin(),
                                  [](const auto& a, const auto& b) { return a.text == b.text; });
    const auto traits = vision::traitsOf(line, classes, row.crop);
    samples.lines.push_back({vision::termsOf(traits), right, group});
    const std::vector<int> partner = vision::alignSymbols(seen, wanted);
    for (std::size_t i = 0; i < seen.size(); ++i) {
        if (seen[i].text == "\x01" || seen[i].text == " ")
            continue;  // no letter was said
        const bool same =
            partner[i] >= 0 && wanted[static_cast<std::size_t>(partner[i])].text == seen[i].text;
        const double share = std::clamp(line.places[i].shares.front().share, 1e-4, 1 - 1e-4);
        samples.cells.push_back({{std::log(share / (1 - share))}, same, group});
    }
}

// The lines where they are known to stand, laid straight, those of the stamps that are found, and
// rows where nothing stands. On its head a line is no sample: reading tells which way is up.
void addNetworkLines(const LabelledPhoto& labelled, int group, vision::StampFinder& finder,
                     vision::LineReader& reader, LineSamples& samples)
{
    const auto add = [&](const auto& stamp, const auto& row, const std::string& truth) {
        addNetworkLine(reader.look(stamp, row), reader.classes(), truth, group, samples);
    };
    for (const bench::LabelledLine& line : labelled.lines) {
        vision::StampOutline outline = vision::outlineFromCorners(line.corners);
        outline.lines = {line.corners};
        const auto stamp = vision::enhanceStamp(vision::rectifyStamp(labelled.photo, outline));
        add(stamp, vision::rowsOf(stamp.rectified).front(), line.text);
    }
    eachRow(labelled, finder, [&](const auto& stamp, const auto& row, const std::string& truth) {
        if (!truth.empty() || labelled.lines.empty())
            add(stamp, row, truth);
    });
}

Settings settingsFrom(int argc, char** argv)
{
    Settings settings;
    settings.what = argc > 1 ? argv[1] : "";
    for (int i = 2; i < argc; ++i) {
        const std::string name = argv[i];
        if (name == "--drawn" && i + 1 < argc)
            settings.drawn = std::stoi(argv[++i]);
        else if (name == "--marks" && i + 1 < argc)
            settings.marks = std::stoi(argv[++i]);
        else if (name == "--levels" && i + 1 < argc)
            settings.levels = std::stoi(argv[++i]);
        else if (name == "--seed" && i + 1 < argc)
            settings.seed = static_cast<std::uint32_t>(std::stoul(argv[++i]));
        else
            settings.folders.emplace_back(name);
    }
    return settings;
}

}  // namespace

int main(int argc, char** argv)
{
    const Settings settings = settingsFrom(argc, argv);
    int group = 0;
    if (settings.what == "chains") {
        std::vector<Sample> samples;
        eachPhoto(settings,
                  [&](const LabelledPhoto& photo) { addChains(photo, group++, samples); });
        report("chains", vision::chainModel(), samples, 1.0);
        return 0;
    }
    if (settings.what == "lines") {
        vision::TesseractLines reader;
        LineSamples samples;
        eachPhoto(settings,
                  [&](const LabelledPhoto& photo) { addLines(photo, group++, reader, samples); });
        report("lines", vision::lineModel(), samples.lines, 0.3);
        report("cells", vision::cellModel(), samples.cells, 0.3);
        return 0;
    }
    if (settings.what == "network") {
        vision::LineReader reader(flow::weightsFolder());
        vision::StampFinder finder(flow::weightsFolder());
        LineSamples samples;
        eachPhoto(settings, [&](const LabelledPhoto& photo) {
            addNetworkLines(photo, group++, finder, reader, samples);
        });
        report("lines", vision::decodedLineModel(), samples.lines, 0.3);
        report("cells", {0, {{"own", 1}}}, samples.cells, 0.3);
        return 0;
    }
    if (settings.what == "finder") {
        vision::FinderNetwork network(flow::weightsFolder());
        std::vector<Sample> samples;
        eachPhoto(settings, [&](const LabelledPhoto& photo) {
            bench::addFinderLines(photo, group++, network, samples);
        });
        report("lines", vision::finderLineModel(), samples, 0.3);
        return 0;
    }
    std::cerr << "say what to fit: chains, lines, network or finder\n";
    return 2;
}
