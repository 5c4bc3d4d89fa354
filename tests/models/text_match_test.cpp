#include "models/text_match.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "models/alignment.h"
#include "models/cell_weights.h"
#include "models/text_alignment.h"
#include "models/typed_notation.h"

namespace {

models::Line lineToMatch(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    REQUIRE_FALSE(parsed.fault);
    return parsed.lines.empty() ? models::Line{} : parsed.lines.front();
}

double match(const std::string& typed, const std::string& truth,
             const models::MatchOptions& options = {})
{
    return models::logProbability(lineToMatch(typed), truth, models::ConfusionTable::published(),
                                  options);
}

// Every path through the model one by one, straight from its definition: before each letter any
// number of stray cells, then the letter is skipped or leaves the next cell (or is taken by a
// stretch), and behind the last letter strays again. At an open end the text is cut or not, evenly,
// and a geometric number of its letters lies beyond.
class PathCounter {
public:
    PathCounter(const models::Line& line, const std::string& truth,
                const models::MatchOptions& options)
        : rates_(options.insert_rate),
          cut_left_(options.open_left ? 0.5 : 0),
          cut_right_(options.open_right ? 0.5 : 0)
    {
        text_ = models::makeMatchText(truth, ids_, options.skip_rate);
        cells_ = models::weighCells(line.cells, ids_, models::ReadingErrors{});
    }

    double sum() const
    {
        double total = (1 - cut_left_) * from(0, 0);
        for (std::size_t j = 1; j <= text_.letters.size(); ++j)
            total += cut_left_ * beyond(j) * from(0, j);
        return total;
    }

private:
    static double beyond(std::size_t letters)
    {
        return 0.1 * std::pow(0.9, static_cast<double>(letters) - 1);
    }

    double from(std::size_t cell, std::size_t letter) const
    {
        double total = 0;
        if (cell == cells_.size())
            total += rates_.none * (letter == text_.letters.size()
                                        ? 1 - cut_right_
                                        : cut_right_ * beyond(text_.letters.size() - letter));
        if (cell < cells_.size())
            total += models::strayWeight(cells_[cell], rates_) * from(cell + 1, letter);
        if (letter < text_.letters.size()) {
            const double skip = text_.skip[letter];
            total += rates_.none * skip * from(cell, letter + 1);
            if (cell < cells_.size() && !cells_[cell].stretch)
                total += rates_.none * (1 - skip) * seen(cell, letter) * from(cell + 1, letter + 1);
        }
        if (cell < cells_.size() && cells_[cell].stretch)
            total += stretchFrom(cell, letter);
        return total;
    }

    double stretchFrom(std::size_t cell, std::size_t letter) const
    {
        double total = 0;
        const models::CellWeights& stretch = cells_[cell];
        for (std::size_t taken = 0; letter + taken <= text_.letters.size(); ++taken) {
            const int count = static_cast<int>(taken);
            if (count < stretch.least || (stretch.most && count > *stretch.most))
                continue;
            const double share = stretch.most ? 1.0 / (*stretch.most - stretch.least + 1)
                                              : 0.1 * std::pow(0.9, count - stretch.least);
            total += share * from(cell + 1, letter + taken);
        }
        return total;
    }

    double seen(std::size_t cell, std::size_t letter) const
    {
        return cells_[cell].unread ? 1 : cells_[cell].of_letter[text_.letters[letter]];
    }

    models::GapRates rates_;
    double cut_left_, cut_right_;
    models::LetterIds ids_;
    models::MatchText text_;
    std::vector<models::CellWeights> cells_;
};

}  // namespace

TEST_CASE("The sum over alignments is the sum over every path", "[models][match]")
{
    for (const char* typed : {"AB", "A?B", "(0|8)1", "+B", "A[.]C", "A[..]", "[- - -]B", "A[1..3]",
                              "[+ + +]C", "A. B", "[AB]C", ""})
        for (const char* truth : {"", "A", "AB", "A.B", "ABC", "B C", "81"})
            for (const double rate : {0.02, 0.3}) {
                CAPTURE(typed, truth, rate);
                models::MatchOptions options;
                options.insert_rate = options.skip_rate = rate;
                for (const bool open_left : {false, true})
                    for (const bool open_right : {false, true}) {
                        options.open_left = open_left;
                        options.open_right = open_right;
                        const double expected =
                            PathCounter(lineToMatch(typed), truth, options).sum();
                        CHECK(match(typed, truth, options) ==
                              Approx(std::log(expected)).margin(1e-9));
                    }
            }
}

TEST_CASE("A probability is never above one", "[models][match]")
{
    for (const char* typed : {"", "A", "[- - -]", "+", "[...]", "T.H. & CO"})
        for (const char* truth : {"", "A", "T.H. & CO", "ANYTHING"}) {
            models::MatchOptions open;
            open.open_left = open.open_right = true;
            CHECK(match(typed, truth) <= 0);
            CHECK(match(typed, truth, open) <= 0);
        }
}

TEST_CASE("The likeliest path counts the edits that published distances count", "[models][match]")
{
    // With one path far likelier than all others, each edit costs its rate: the log falls by about
    // log(rate) an edit. kitten/sitting and saturday/sunday: Rosetta Code, page "Levenshtein
    // distance"; intention/execution: Jurafsky and Martin, Speech and Language Processing. Their
    // distances are 3, 3 and 5, so that they keep this order.
    struct Pair {
        const char *seen, *truth;
        std::size_t distance;
    };
    for (const Pair& pair : {Pair{"kitten", "sitting", 3}, Pair{"saturday", "sunday", 3},
                             Pair{"intention", "execution", 5}}) {
        CAPTURE(pair.seen);
        REQUIRE(models::editDistance(pair.seen, pair.truth) == pair.distance);
        // With replacement as dear as one insertion or one skip (each e^-12), counts are exact.
        const models::MatchOptions options{.insert_rate = 1e-6, .skip_rate = 1e-6};
        const double same = match(pair.truth, pair.truth, options);
        const double edited = match(pair.seen, pair.truth, options);
        const double an_edit =
            match("xbcdefg", "abcdefg", options) - match("abcdefg", "abcdefg", options);
        // A replaced letter costs `an_edit`; an inserted or skipped one up to 2.2 times as much.
        const double edits = (edited - same) / an_edit;
        CHECK(edits > static_cast<double>(pair.distance) * 0.8);
        CHECK(edits < static_cast<double>(pair.distance) * 2.2);
    }
}

TEST_CASE("One more wrong letter never makes a text likelier", "[models][match]")
{
    const std::string truth = "HARSKELL";
    std::string seen = truth;
    double before = match(seen, truth);
    for (std::size_t i = 0; i < truth.size(); ++i) {
        seen[i] = 'W';
        const double now = match(seen, truth);
        CAPTURE(seen);
        CHECK(now < before);
        before = now;
    }
}

TEST_CASE("Clear fits better than doubtful, doubtful than unread, unread than wrong",
          "[models][match]")
{
    const double clear = match("HARSK", "HARSK"), doubtful = match("HA?RSK", "HARSK"),
                 look_alike = match("H(4|A)RSK", "HARSK"), wrong = match("HWRSK", "HARSK");
    CHECK(clear > doubtful);
    CHECK(doubtful > look_alike);
    CHECK(look_alike > wrong);
    // Unread is given, not weighed: it says nothing for or against a letter.
    CHECK(match("H+RSK", "HARSK") == Approx(match("H+RSK", "HERSK")));
    CHECK(match("H+RSK", "HARSK") > wrong);
}

TEST_CASE("A letter and what it is confused with are nearer than two strangers", "[models][match]")
{
    CHECK(match("194B", "1948") > match("194W", "1948"));
    CHECK(match("PELK", "RELK") > match("PELK", "TELK"));
    CHECK(match("harsk", "HARSK") > match("marsk", "HARSK"));
}

TEST_CASE("Full stops and spaces weigh little", "[models][match]")
{
    const double exact = match("T.H. & CO", "T.H. & CO"), plain = match("TH&CO", "T.H. & CO");
    const double letter_less = match("T.H. & C", "T.H. & CO");
    CHECK(exact > plain);
    CHECK((exact - plain) / 4 < (exact - letter_less) / 1.5);  // a stop or space costs far less
    CHECK(match("T. H. & CO", "T.H. & CO") > match("T.XH. & CO", "T.H. & CO"));
}

TEST_CASE("Lost stretches take their number of letters", "[models][match]")
{
    CHECK(match("HA[..]K", "HARSK") > match("HA[....]K", "HARSK"));
    CHECK(match("HA[1..3]K", "HARSK") > match("HA[.]K", "HARSK"));
    CHECK(match("HA[- - -]K", "HARSK") > match("HA[- - -]K", "HARSKA"));
}

TEST_CASE("A restored letter was not read and weighs as a lost one", "[models][match]")
{
    CHECK(match("HA[R]SK", "HARSK") == Approx(match("HA[.]SK", "HARSK")));
    CHECK(match("HA[W]SK", "HARSK") == Approx(match("HA[R]SK", "HARSK")));
}

TEST_CASE("An open end lets a text be cut off there", "[models][match]")
{
    const models::MatchOptions closed, right{.open_right = true}, left{.open_left = true};
    CHECK(match("HARS", "HARSKELL", right) > match("HARS", "HARSKELL", closed) + 5);
    CHECK(match("KELL", "HARSKELL", left) > match("KELL", "HARSKELL", closed) + 5);
    CHECK(match("KELL", "HARSKELL", right) == Approx(match("KELL", "HARSKELL", closed)).margin(1));
}

TEST_CASE("Long lines stay in range", "[models][match]")
{
    const std::string long_text(400, 'A');
    CHECK(std::isfinite(match(long_text, long_text)));
    CHECK(std::isfinite(match(long_text, "B")));
    CHECK(match(long_text, long_text) > match(long_text, long_text + "BBBB"));
}

TEST_CASE("Options that forbid every alignment give minus infinity", "[models][match]")
{
    const models::MatchOptions strict{.insert_rate = 0, .skip_rate = 0};
    CHECK(match("AB", "ABC", strict) == -std::numeric_limits<double>::infinity());
    CHECK(std::isfinite(match("AB", "AB", strict)));
}

TEST_CASE("A rate that is no probability is refused", "[models][match]")
{
    CHECK_THROWS_AS(match("A", "A", {.insert_rate = -0.1}), std::invalid_argument);
    CHECK_THROWS_AS(match("A", "A", {.skip_rate = 1.1}), std::invalid_argument);
    CHECK_THROWS_AS(match("A", "A", {.insert_rate = std::nan("")}), std::invalid_argument);
}
