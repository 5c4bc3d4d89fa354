#include "vision/writing_model.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/temporary_folder.h"
#include "tests/support/weights_sums.h"
#include "vision/ctc_search.h"
#include "vision/weights_error.h"

using vision::WritingModel;

namespace {

WritingModel projects()
{
    return WritingModel::load(WEFTMARK_SOURCE_DIR "/vision/weights/writing_model.txt");
}

}  // namespace

TEST_CASE("Shares of what may follow sum to one", "[vision][writing]")
{
    const WritingModel model = projects();
    // All kinds that the grammar writes, with the number of characters of each.
    const std::string signs = "012359._,&/-():'+*#@";
    for (const std::string before : {"^", "^AA", "5_", "^19", "/"}) {
        CAPTURE(before);
        double sum = std::exp(model.logProbability(before, WritingModel::line_end));
        sum += 26 * (std::exp(model.logProbability(before, 'A')) +
                     std::exp(model.logProbability(before, 'a')));
        for (const char kind : signs)
            sum += (kind == '5' ? 5 : 1) * std::exp(model.logProbability(before, kind));
        // Backing off leaves a little for kinds that never stood, of which there are none here.
        CHECK(sum == Approx(1).margin(0.05));
    }
}

TEST_CASE("Letters go with letters, digits with digits", "[vision][writing]")
{
    const WritingModel model = projects();
    const auto likelier = [&](const std::string& before, char one, char other) {
        return model.logProbability(before, one) > model.logProbability(before, other);
    };
    CHECK(likelier("^19", '0', 'A'));  // 1900, not 19O
    CHECK(likelier("^AA", 'A', '0'));  // NOV, not N0V
    CHECK(likelier("^A.", 'A', '1'));  // J.I., not J.1.
    CHECK(likelier("^3", '/', 'A'));   // 3/40
}

TEST_CASE("What stands before makes a character likelier or less likely", "[vision][writing]")
{
    const WritingModel model = projects();
    CHECK(model.logRatio("^19", '0') > 0);
    CHECK(model.logRatio("^19", 'A') < 0);
    CHECK(model.logRatio("^AA", WritingModel::unknown) == 0);  // a letter that cannot be told
    // In a code letters and digits may follow each other as they like, signs hardly stand.
    CHECK(model.logRatioInCodes('A') == Approx(-std::log(36) - model.logProbability({}, 'A')));
    CHECK(model.logRatioInCodes('.') < -2);
}

TEST_CASE("A line is weighed as a mark or as a code, whichever it is likelier to be",
          "[vision][writing]")
{
    const vision::LineClasses classes{{"O", "0", "1", "9", "4", "K", "7"}};
    const WritingModel model = projects();
    const vision::WritingWeight writing(classes, &model, 1);
    const auto weightOf = [&](const std::vector<int>& line) {
        return writing.log(writing.ofLine(line));
    };
    const std::vector<int> year = {3, 4, 5, 2}, year_with_letter = {3, 4, 5, 1};
    const std::vector<int> code = {6, 7, 1, 6, 2, 7}, other_code = {6, 7, 2, 6, 1, 7};
    CHECK(weightOf(year) - weightOf(year_with_letter) > 1);        // 1940, not 194O
    CHECK(std::abs(weightOf(code) - weightOf(other_code)) < 0.7);  // K7OK07 or K70KO7
    // Another class in one place: the same as the whole line weighed anew.
    const std::vector<int> asked = {1, 2, 6, classes.lost(), 7};
    for (std::size_t place = 0; place < year.size(); ++place) {
        const auto sums = writing.withClasses(year, writing.ofLine(year), place, asked);
        REQUIRE(sums.size() == asked.size());
        for (std::size_t i = 0; i < asked.size(); ++i) {
            std::vector<int> changed = year;
            changed[place] = asked[i];
            CHECK(writing.log(sums[i]) == Approx(weightOf(changed)));
        }
    }
}

TEST_CASE("Kinds of characters", "[vision][writing]")
{
    CHECK(WritingModel::kindOf("Q") == 'A');
    CHECK(WritingModel::kindOf("q") == 'a');
    CHECK(WritingModel::kindOf("1") == '1');
    CHECK(WritingModel::kindOf("6") == '5');
    CHECK(WritingModel::kindOf(" ") == '_');
    CHECK(WritingModel::kindOf("/") == '/');
    CHECK(WritingModel::kindOf("\u2191") == '@');
    CHECK(WritingModel::kindOf("\u00C9") == WritingModel::unknown);
}

TEST_CASE("By hand: two counts, smoothed after Witten and Bell", "[vision][writing]")
{
    const support::TemporaryFolder folder;
    // "0" stood three times at the beginning of a line, "A" once; two kinds, four characters.
    const auto file = folder.write("two.txt", "order 2\n0 3\nA 1\n^0 3\n^A 1\n");
    support::listSums(folder.path());
    const WritingModel model = WritingModel::load(file);
    const double shorter = (3 + 2 / 22.0) / (4 + 2);  // without knowing what stood before
    const double share = (3 + 2 * shorter) / (4 + 2);
    CHECK(model.logProbability("^", '0') == Approx(std::log(share)));
    CHECK(model.logProbability("?", '0') == Approx(std::log(shorter)));
}

TEST_CASE("A table that is none is refused in a sentence", "[vision][writing]")
{
    const support::TemporaryFolder folder;
    for (const std::string text :
         {"", "order", "order 0\n", "order 2\n0 zero\n", "order 1\n00 3\n"}) {
        CAPTURE(text);
        const auto file = folder.write("bad.txt", text);
        support::listSums(folder.path());
        CHECK_THROWS_WITH(WritingModel::load(file), Catch::Contains("bad.txt"));
    }
    CHECK_THROWS_AS(WritingModel::load(folder.path() / "none.txt"), vision::WeightsError);
}
