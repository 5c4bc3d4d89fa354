#include "models/trie_search.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <random>
#include <string>

#include "models/cell_weights.h"
#include "models/typed_notation.h"

namespace {

using models::TextTrie;

// Some alone, and many names that go on in a few ways, as makers' marks do.
const std::vector<std::string>& trieTexts()
{
    static const std::vector<std::string> texts = [] {
        std::vector<std::string> all = {
            "",         "A",       "H",        "T.H. & CO",  "T.H. & CO LTD",
            "HARSKELL", "HARSKEL", "HARSKELL", "HARSKETH",   "KESTERLOW & SONS",
            "B.H.G.",   "8",       "MARSK",    "KESTER LOW", "C.O. & L LTD"};
        for (const char* name : {"ORRIN", "PELK", "VANE", "HARSKE", "QUILL", "ULVE", "T.H.", "BRAM",
                                 "DURROW", "ESK", "FENNE", "GARTH", "HARSP", "WREN", "Z"})
            for (const char* ending : {"", " & CO", " & CO LTD", " LTD"})
                all.push_back(std::string(name) + ending);
        return all;
    }();
    return texts;
}

// A line against a trie of these texts.
class TrieCase {
public:
    explicit TrieCase(const std::string& typed) : rates_(0.05)
    {
        for (const std::string& text : trieTexts())
            texts_.push_back(models::makeMatchText(text, ids_, 0.03));
        weights_ = models::weighCells(models::parseTyped(typed).lines.at(0).cells, ids_,
                                      models::ReadingErrors{});
        cells_ = models::cellsAsOdds(weights_, rates_);
        plan_.entry.assign(cells_.size() + 1, 0.02);
        plan_.exit = plan_.entry;
        plan_.entry.front() = plan_.exit.back() = 0.8;
    }

    models::AlignmentPlan& plan() { return plan_; }

    double oneByOne(std::size_t text) const
    {
        return std::exp(models::logAlignmentSum(cells_, texts_[text], plan_, rates_));
    }

    std::map<std::size_t, double> searched(const models::SearchLimits& limits) const
    {
        const TextTrie trie(texts_, TextTrie::Direction::Forward);
        return byText(models::searchTrie(trie, cells_, plan_, rates_, limits));
    }

    // Texts whose beginning the plan's left cut has taken, found from their ends.
    std::map<std::size_t, double> beginningCut() const
    {
        const TextTrie trie(texts_, TextTrie::Direction::Backward);
        const std::vector<models::AlignedCell> cells(cells_.rbegin(), cells_.rend());
        models::AlignmentPlan plan;
        plan.entry.assign(plan_.exit.rbegin(), plan_.exit.rend());
        plan.exit.assign(plan_.entry.rbegin(), plan_.entry.rend());
        plan.cut_right = plan_.cut_left;
        return byText(models::searchTrie(trie, cells, plan, rates_, {}, models::Endings::CutOnly));
    }

private:
    static std::map<std::size_t, double> byText(const std::vector<models::FoundText>& found)
    {
        std::map<std::size_t, double> odds;
        for (const models::FoundText& text : found)
            odds[text.text] += text.odds;
        return odds;
    }

    models::GapRates rates_;
    models::LetterIds ids_;
    std::vector<models::MatchText> texts_;
    std::vector<models::CellWeights> weights_;
    std::vector<models::AlignedCell> cells_;
    models::AlignmentPlan plan_;
};

const std::vector<std::string>& linesOfAllKinds()
{
    static const std::vector<std::string> lines = {"HARSKELL",      "H?A(R|P)SKE+L",
                                                   "T.H & C0",      "[- - -]SKELL",
                                                   "HAR[..]LL",     "K[3..5]LOW",
                                                   "+ +",           "[+ + +]H",
                                                   "SIZE 3 B.H.G",  "W",
                                                   "[.]",           "KESTER[0..2]LOW",
                                                   "ORR+N & CO",    "WRAN LT",
                                                   "3 PELK & CO L", "+++ & CO LTD"};
    return lines;
}

}  // namespace

TEST_CASE("A trie's search gives each text what it has alone", "[models][match]")
{
    for (const std::string& typed : linesOfAllKinds())
        for (const double cut_left : {0.0, 0.3})
            for (const double cut_right : {0.0, 0.6}) {
                TrieCase one(typed);
                one.plan().cut_left = cut_left;
                one.plan().cut_right = cut_right;
                const std::map<std::size_t, double> found = one.searched({});
                for (std::size_t text = 0; text < trieTexts().size(); ++text) {
                    CAPTURE(typed, cut_left, cut_right, trieTexts()[text]);
                    const double expected = one.oneByOne(text);
                    if (expected > 0)
                        // What is far below the best may carry a rounding of the running sums.
                        CHECK(found.at(text) == Approx(expected).epsilon(1e-6).margin(1e-12));
                    else
                        CHECK(found.count(text) == 0);
                }
            }
}

TEST_CASE("A text whose beginning is cut off is found from its end", "[models][match]")
{
    for (const std::string& typed : linesOfAllKinds()) {
        TrieCase whole(typed), cut(typed);
        cut.plan().cut_left = 0.3;
        whole.plan().entry.front() *= 0.7;  // what is not cut off begins at the first cell as often
        const std::map<std::size_t, double> found = cut.beginningCut();
        for (std::size_t text = 0; text < trieTexts().size(); ++text) {
            CAPTURE(typed, trieTexts()[text]);
            const double expected = cut.oneByOne(text) - whole.oneByOne(text);
            const auto odds = found.find(text);
            CHECK((odds == found.end() ? 0 : odds->second) ==
                  Approx(expected).epsilon(1e-6).margin(1e-12 * whole.oneByOne(text)));
        }
    }
}

TEST_CASE("Limits leave out what is below them and nothing else", "[models][match]")
{
    for (const std::string& typed : linesOfAllKinds()) {
        const TrieCase one(typed);
        const std::map<std::size_t, double> all = one.searched({});
        double best = 0;
        for (const auto& [text, odds] : all)
            best = std::max(best, odds);
        for (const models::SearchLimits& limits :
             {models::SearchLimits{0.01, 0}, models::SearchLimits{0, 1e-4},
              models::SearchLimits{1e-3, 1e-6}}) {
            const std::map<std::size_t, double> found = one.searched(limits);
            const double threshold = std::max(limits.least, limits.share * best);
            for (const auto& [text, odds] : all) {
                CAPTURE(typed, trieTexts()[text], odds, threshold);
                // What the search leaves out of a sum is a thousandth of the threshold.
                if (odds > 1.01 * threshold)
                    CHECK(found.at(text) == Approx(odds).epsilon(2e-3));
                else if (odds < 0.99 * threshold)
                    CHECK(found.count(text) == 0);
            }
        }
    }
}

TEST_CASE("The best text's worth decides how far behind others may be", "[models][match]")
{
    const TrieCase one("HARSKELL");
    // HARSKELL itself was made in years that the stamp's date excludes.
    std::vector<double> worth(trieTexts().size(), 1);
    for (std::size_t text = 0; text < worth.size(); ++text)
        worth[text] = trieTexts()[text] == "HARSKELL" ? 1e-6 : 1;
    const std::size_t shorter = 6;
    REQUIRE(trieTexts()[shorter] == "HARSKEL");
    const double behind = one.oneByOne(shorter) / one.oneByOne(5);
    REQUIRE(behind < 0.1);
    CHECK(one.searched({0, 3 * behind}).count(shorter) == 0);
    CHECK(one.searched({0, 3 * behind, 0, &worth}).count(shorter) == 1);
}

TEST_CASE("A trie without texts finds none, and a line without cells the empty text",
          "[models][match]")
{
    const TextTrie none({}, TextTrie::Direction::Forward);
    models::AlignmentPlan plan;
    plan.entry = plan.exit = {1};
    const models::GapRates rates(0.02);
    CHECK(models::searchTrie(none, {}, plan, rates, {}).empty());
    models::LetterIds ids;
    const TextTrie two({models::makeMatchText("", ids, 0), models::makeMatchText("A", ids, 0)},
                       TextTrie::Direction::Forward);
    const auto found = models::searchTrie(two, {}, plan, rates, {});
    REQUIRE(found.size() == 1);
    CHECK(found.front().text == 0);
}
