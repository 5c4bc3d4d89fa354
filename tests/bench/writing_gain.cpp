// What knowing how marks are written gives the line reader, and what it takes: lines of drawn marks
// and random codes in the same faces on the same cloth, decoded with the writing model weighed more
// and less. The seeds are not those of the standing set.
//   writing_gain [--list] [--marks N] [--seed S] [WEIGHT ...]     (60, 300000; 0 0.2 0.4 0.6 0.8)
// --list: each line that is read otherwise at another weight.
// Look-alikes: letters or digits taken for the other of O/0, I/1, S/5, B/8, Z/2, of 100.

#include <algorithm>
#include <array>
#include <iomanip>
#include <iostream>
#include <map>
#include <string>
#include <vector>

#include "tests/bench/read_marks.h"
#include "tests/support/dice.h"
#include "tests/support/drawn_marks.h"
#include "tests/support/reading_metrics.h"
#include "vision/enhance.h"
#include "vision/line_reader.h"
#include "vision/rectify.h"

namespace {

struct Settings {
    std::size_t marks = 60;
    std::uint32_t seed = 300000;
    std::vector<double> weights;
    bool list = false;
};

struct Tally {
    int lines = 0, exact = 0, look_alikes = 0, characters = 0;
    metrics::CharacterErrors errors;
};

std::string randomCode(Dice& dice)
{
    static const std::string all = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
    std::string text;
    for (int left = dice.whole(4, 9); left > 0; --left)
        text += all[static_cast<std::size_t>(dice.whole(0, static_cast<int>(all.size()) - 1))];
    return text;
}

bool lookAlike(char32_t a, char32_t b)
{
    static const std::array<std::u32string, 5> pairs = {U"O0", U"I1", U"S5", U"B8", U"Z2"};
    for (const std::u32string& pair : pairs)
        if (pair.find(a) != pair.npos && pair.find(b) != pair.npos)
            return a != b;
    return false;
}

std::string textOf(const vision::DecodedLine& line, const vision::LineClasses& classes)
{
    std::string text;
    for (const vision::DecodedPlace& place : line.places) {
        const int best = place.shares.empty() ? classes.traces() : place.shares.front().of_class;
        text += classes.isCharacter(best) ? classes.characters[static_cast<std::size_t>(best) - 1]
                                          : "\x01";
    }
    return bench::folded(text);
}

void count(const std::string& read, const std::string& truth, Tally& tally)
{
    ++tally.lines;
    tally.exact += read == bench::folded(truth) ? 1 : 0;
    const std::u32string a = metrics::lettersAndDigits(read), b = metrics::lettersAndDigits(truth);
    tally.errors += metrics::characterErrors(a, b);
    tally.characters += static_cast<int>(b.size());
    const auto partners = metrics::partnersOf(a, b);
    for (std::size_t i = 0; i < a.size(); ++i)
        tally.look_alikes += partners[i] && lookAlike(a[i], b[*partners[i]]) ? 1 : 0;
}

void listDifferences(const std::string& truth, const std::map<double, std::string>& read)
{
    const std::string& first = read.begin()->second;
    if (std::all_of(read.begin(), read.end(), [&](const auto& one) { return one.second == first; }))
        return;
    std::cout << bench::folded(truth);
    for (const auto& [weight, text] : read)
        std::cout << "   " << weight << ": " << text;
    std::cout << '\n';
}

void readMark(const DrawnMark& mark, const Settings& settings, vision::LineReader& reader,
              std::map<double, Tally>& tallies)
{
    vision::Photo photo;
    const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(mark.scene);
    photo.pixels = drawn.pixels;
    for (const synthetic::LineTruth& line : drawn.stamps.front().lines) {
        vision::StampOutline outline = vision::outlineFromCorners(line.corners);
        outline.lines = {line.corners};
        const auto stamp = vision::enhanceStamp(vision::rectifyStamp(photo, outline));
        const auto row = reader.look(stamp, vision::rowsOf(stamp.rectified).front());
        std::map<double, std::string> read;
        for (const double weight : settings.weights) {
            const vision::DecodedLine decoded = vision::decodeLine(
                row.log_shares, reader.classes(), &reader.writing(), {.writing_weight = weight});
            read[weight] = textOf(decoded, reader.classes());
            count(read[weight], line.text, tallies[weight]);
        }
        if (settings.list)
            listDifferences(line.text, read);
    }
}

void print(const char* what, double contrast, const std::map<double, Tally>& tallies)
{
    for (const auto& [weight, tally] : tallies)
        std::cout << std::left << std::setw(6) << what << std::right << std::fixed
                  << std::setprecision(2) << std::setw(9) << contrast << std::setw(8) << weight
                  << std::setw(7) << tally.lines << std::setprecision(1) << std::setw(7)
                  << 100.0 * tally.exact / std::max(1, tally.lines) << " %" << std::setprecision(2)
                  << std::setw(7) << 100 * tally.errors.rate().value_or(0) << " %" << std::setw(12)
                  << 100.0 * tally.look_alikes / std::max(1, tally.characters) << '\n';
}

Settings settingsFrom(int argc, char** argv)
{
    Settings settings;
    for (int i = 1; i < argc; ++i) {
        const std::string name = argv[i];
        if (name == "--list")
            settings.list = true;
        else if (name == "--marks" && i + 1 < argc)
            settings.marks = std::stoul(argv[++i]);
        else if (name == "--seed" && i + 1 < argc)
            settings.seed = static_cast<std::uint32_t>(std::stoul(argv[++i]));
        else
            settings.weights.push_back(std::stod(name));
    }
    if (settings.weights.empty())
        settings.weights = {0, 0.2, 0.4, 0.6, 0.8};
    return settings;
}

}  // namespace

int main(int argc, char** argv)
{
    const Settings settings = settingsFrom(argc, argv);
    vision::LineReader reader(flow::weightsFolder());
    std::cout << "text   contrast  weight  lines    exact      CER  look-alikes\n";
    for (const bool random : {false, true})
        for (const double contrast : drawnMarkContrasts()) {
            std::map<double, Tally> tallies;
            for (DrawnMark& mark : otherMarks(contrast, settings.seed, settings.marks)) {
                Dice dice(mark.scene.seed);
                if (random)
                    for (std::string& line : mark.scene.stamps.front().text.lines)
                        line = randomCode(dice);
                readMark(mark, settings, reader, tallies);
            }
            print(random ? "codes" : "marks", contrast, tallies);
        }
    return 0;
}
