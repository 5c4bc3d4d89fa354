// What readers make of letters that are wiped away: the standing drawn marks with some letters'
// ink taken out again, whole or but for their upper part.
//   wiped_letters [--list] [--seed S] [--spacing SHARE] [CONTRAST ...]     (0.25 and 0.40)
// --seed: a hundred other marks, of the seeds S and on.
// --spacing: all lines set with so much between letters, of their height.
// --list: each line too, its wiped letters as (A) or, half wiped, (a), and what was read.
// A wiped letter is kept where a cell of traces or a lost one stands for it.

#include <algorithm>
#include <cctype>
#include <iomanip>
#include <iostream>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "models/alignment.h"
#include "models/typed_notation.h"
#include "tests/bench/labelled_photos.h"
#include "tests/bench/read_marks.h"
#include "tests/support/drawn_marks.h"

namespace {

enum class Wipe { None, Whole, Half };

constexpr double left_of_half = 0.4;  // of the letter's height, above what is wiped
constexpr double hardly_inked = 0.02;
constexpr double sure = 0.9;

struct Tally {
    int letters = 0, kept = 0, dropped = 0, right = 0, sure_letter = 0, sure_and_wrong = 0;
};

bool isLetterOrDigit(const std::string& text)
{
    return text.size() == 1 && std::isalnum(static_cast<unsigned char>(text[0])) != 0;
}

// Inner letters, each third or so, whole and half in turn.
std::vector<Wipe> chooseLetters(const synthetic::LineTruth& line, std::mt19937& dice)
{
    std::vector<Wipe> wipes(line.letters.size(), Wipe::None);
    bool whole = dice() % 2 == 0;
    for (std::size_t i = 1 + dice() % 2; i + 1 < wipes.size(); i += 2 + dice() % 3) {
        const bool inner = line.letters[i - 1].text != " " && line.letters[i + 1].text != " ";
        if (!inner || !isLetterOrDigit(line.letters[i].text) || line.letters[i].inked < 0.6)
            continue;
        wipes[i] = whole ? Wipe::Whole : Wipe::Half;
        whole = !whole;
    }
    return wipes;
}

// Where the ink of a letter goes, 0 to 1.
void addWipe(const synthetic::LetterTruth& letter, Wipe wipe, cv::Mat& mask)
{
    synthetic::Quad quad = letter.corners;
    const auto along = [](cv::Point2f from, cv::Point2f to, float share) {
        return from + (to - from) * share;
    };
    if (wipe == Wipe::Half) {
        quad[0] = along(letter.corners[0], letter.corners[3], static_cast<float>(left_of_half));
        quad[1] = along(letter.corners[1], letter.corners[2], static_cast<float>(left_of_half));
    } else {  // serifs reach beyond the letter's place
        quad[0] = along(letter.corners[0], letter.corners[3], -0.1F);
        quad[1] = along(letter.corners[1], letter.corners[2], -0.1F);
    }
    quad[2] = along(letter.corners[2], letter.corners[1], -0.1F);
    quad[3] = along(letter.corners[3], letter.corners[0], -0.1F);
    std::vector<cv::Point> polygon;
    for (const cv::Point2f& corner : quad)
        polygon.emplace_back(corner);
    cv::fillConvexPoly(mask, polygon, cv::Scalar(1));
}

cv::Mat wiped(const cv::Mat& inked, const cv::Mat& bare, const synthetic::LineTruth& line,
              const std::vector<Wipe>& wipes)
{
    cv::Mat mask(inked.size(), CV_32F, cv::Scalar(0));
    for (std::size_t i = 0; i < wipes.size(); ++i)
        if (wipes[i] != Wipe::None)
            addWipe(line.letters[i], wipes[i], mask);
    cv::GaussianBlur(mask, mask, {}, 1.0);
    cv::Mat result;
    cv::blendLinear(inked, bare, 1 - mask, mask, result);
    return result;
}

std::string lettersOf(const models::Cell& cell)
{
    return cell.alternatives.empty() ? std::string()
                                     : bench::folded(cell.alternatives.front().text);
}

bool isUnread(const models::Cell& cell)
{
    return cell.state == models::CellState::Traces || cell.state == models::CellState::Lost;
}

void count(const synthetic::LineTruth& line, const std::vector<Wipe>& wipes,
           const models::Line& read, std::map<Wipe, Tally>& tallies)
{
    const auto cost = [&](std::size_t i, std::size_t j) {
        if (isUnread(read.cells[j]))
            return wipes[i] == Wipe::None ? 0.9 : 0.0;
        const bool same = lettersOf(read.cells[j]) == bench::folded(line.letters[i].text);
        return same ? 0.0 : wipes[i] == Wipe::None ? 1.0 : 0.6;
    };
    for (const models::AlignedPair& pair :
         models::alignSequences(line.letters.size(), read.cells.size(), cost, 0.7)) {
        if (!pair.first || wipes[*pair.first] == Wipe::None)
            continue;
        Tally& tally = tallies[wipes[*pair.first]];
        ++tally.letters;
        if (!pair.second) {
            ++tally.dropped;
            continue;
        }
        const models::Cell& cell = read.cells[*pair.second];
        const bool right = lettersOf(cell) == bench::folded(line.letters[*pair.first].text);
        const bool is_sure = !isUnread(cell) && cell.alternatives.front().certainty >= sure;
        tally.kept += isUnread(cell) ? 1 : 0;
        tally.right += !isUnread(cell) && right ? 1 : 0;
        tally.sure_letter += is_sure ? 1 : 0;
        tally.sure_and_wrong += is_sure && !right ? 1 : 0;
    }
}

std::string markedUp(const synthetic::LineTruth& line, const std::vector<Wipe>& wipes)
{
    std::string text;
    for (std::size_t i = 0; i < wipes.size(); ++i) {
        std::string letter = line.letters[i].text;
        if (wipes[i] == Wipe::Half)
            letter[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(letter[0])));
        text += wipes[i] == Wipe::None ? letter : "(" + letter + ")";
    }
    return text;
}

void print(double contrast, const char* what, const Tally& tally)
{
    const auto share = [&](int count) {
        std::cout << std::setw(8) << std::fixed << std::setprecision(1)
                  << 100.0 * count / std::max(1, tally.letters) << " %";
    };
    std::cout << std::setprecision(2) << std::fixed << contrast << "  " << std::setw(6) << what
              << std::setw(8) << tally.letters;
    for (const int count :
         {tally.kept, tally.dropped, tally.right, tally.sure_letter, tally.sure_and_wrong})
        share(count);
    std::cout << '\n';
}

struct Settings {
    std::vector<double> contrasts;
    bool lists = false;
    std::uint32_t seed = 0;
    std::optional<double> spacing;
};

Settings settingsFrom(int argc, char** argv)
{
    Settings settings;
    for (int i = 1; i < argc; ++i) {
        const std::string name = argv[i];
        if (name == "--list")
            settings.lists = true;
        else if (name == "--seed" && i + 1 < argc)
            settings.seed = static_cast<std::uint32_t>(std::stoul(argv[++i]));
        else if (name == "--spacing" && i + 1 < argc)
            settings.spacing = std::stod(argv[++i]);
        else
            settings.contrasts.push_back(std::stod(name));
    }
    if (settings.contrasts.empty())
        settings.contrasts = {0.25, 0.40};
    return settings;
}

std::vector<DrawnMark> marksAt(double contrast, const Settings& settings)
{
    std::vector<DrawnMark> marks =
        settings.seed == 0 ? drawnMarks(contrast) : otherMarks(contrast, settings.seed, 100);
    for (DrawnMark& mark : marks)
        if (settings.spacing)
            mark.scene.stamps.front().text.letter_spacing = *settings.spacing;
    return marks;
}

// Wipes letters out of a mark's lines, reads each and counts what became of them.
void readWiped(const DrawnMark& mark, const cv::Mat& ground, bool lists, flow::Engines& engines,
               std::map<Wipe, Tally>& tallies)
{
    const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(mark.scene);
    std::mt19937 dice(mark.scene.seed);
    for (const synthetic::LineTruth& line : drawn.stamps.front().lines) {
        const std::vector<Wipe> wipes = chooseLetters(line, dice);
        vision::Photo crop;
        crop.pixels = bench::laidStraight(wiped(drawn.pixels, ground, line, wipes), line.corners);
        const bench::ReadPicture read = bench::readMarks(crop, engines, true);
        const models::Line seen = read.lines.empty() ? models::Line{} : read.lines.front().line;
        count(line, wipes, seen, tallies);
        if (lists)
            std::cout << mark.id << '\t' << markedUp(line, wipes) << '\t'
                      << models::writeTyped(seen) << '\n';
    }
}

}  // namespace

int main(int argc, char** argv)
{
    const Settings settings = settingsFrom(argc, argv);
    flow::Engines engines = flow::makeEngines(WEFTMARK_SOURCE_DIR "/models/register");
    const std::vector<DrawnMark> bare = marksAt(hardly_inked, settings);
    std::cout << "contrast  wiped letters  traces or lost  dropped  right  sure letter  sure and "
                 "wrong\n";
    for (const double contrast : settings.contrasts) {
        std::map<Wipe, Tally> tallies;
        const std::vector<DrawnMark> marks = marksAt(contrast, settings);
        for (std::size_t m = 0; m < marks.size(); ++m)
            readWiped(marks[m], synthetic::drawPhoto(bare[m].scene).pixels, settings.lists, engines,
                      tallies);
        print(contrast, "whole", tallies[Wipe::Whole]);
        print(contrast, "half", tallies[Wipe::Half]);
    }
    return 0;
}
