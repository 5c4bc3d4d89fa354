#include "vision/ctc_search.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <unordered_map>

namespace vision {

namespace {

constexpr double share_of_codes = 0.3;  // of lines; twice as many changed nothing
constexpr float hardly_seen = -9;       // log share of a class not worth following: one in 8,000

// A line as far as it was searched; lines share their beginnings.
struct Prefix {
    std::size_t before = 0;  // the prefix without its last class; 0 is the empty line
    int last = 0;
    WritingSums writing;
    std::string kinds;  // the last ones, as far as they matter
    std::unordered_map<int, std::size_t> longer;
};

// What is known of a prefix at one step: log mass of the alignments that end in a blank, in its
// last class.
struct Mass {
    double blank = never, letter = never;

    double both() const { return logSum(blank, letter); }
};

class Search {
public:
    Search(const cv::Mat& log_shares, const WritingWeight& writing, int beam)
        : log_shares_(log_shares), writing_(writing), beam_(static_cast<std::size_t>(beam))
    {
        prefixes_.emplace_back();
        prefixes_.front().kinds = WritingModel::lineBegin();
        masses_[0].blank = 0;
    }

    void step(int t);
    std::vector<SearchedLine> lines() const;

private:
    std::size_t extended(std::size_t prefix, int of_class);
    void prune();

    const cv::Mat& log_shares_;
    const WritingWeight& writing_;
    std::size_t beam_;
    std::vector<Prefix> prefixes_;
    std::unordered_map<std::size_t, Mass> masses_;
};

std::size_t Search::extended(std::size_t prefix, int of_class)
{
    const auto known = prefixes_[prefix].longer.find(of_class);
    if (known != prefixes_[prefix].longer.end())
        return known->second;
    const char kind = writing_.kindOf(of_class);
    Prefix longer;
    longer.before = prefix;
    longer.last = of_class;
    longer.writing = writing_.added(prefixes_[prefix].writing, prefixes_[prefix].kinds, kind);
    longer.kinds = prefixes_[prefix].kinds + kind;
    if (longer.kinds.size() > writing_.reach())
        longer.kinds.erase(0, longer.kinds.size() - writing_.reach());
    const std::size_t id = prefixes_.size();
    prefixes_[prefix].longer[of_class] = id;
    prefixes_.push_back(std::move(longer));
    return id;
}

void Search::step(int t)
{
    const float* row = log_shares_.ptr<float>(t);
    std::unordered_map<std::size_t, Mass> before;
    before.swap(masses_);
    for (const auto& [prefix, mass] : before) {
        Mass& same = masses_[prefix];
        same.blank = logSum(same.blank, mass.both() + row[0]);
        if (prefix != 0)
            same.letter = logSum(same.letter, mass.letter + row[prefixes_[prefix].last]);
        for (int c = 1; c < log_shares_.cols; ++c) {
            if (row[c] < hardly_seen)
                continue;
            // A class that follows itself needs a blank between.
            const bool again = prefix != 0 && prefixes_[prefix].last == c;
            Mass& longer = masses_[extended(prefix, c)];
            longer.letter = logSum(longer.letter, (again ? mass.blank : mass.both()) + row[c]);
        }
    }
    prune();
}

void Search::prune()
{
    if (masses_.size() <= beam_)
        return;
    std::vector<std::pair<double, std::size_t>> scores;  // of two alike the older prefix goes
    for (const auto& [prefix, mass] : masses_)
        scores.emplace_back(mass.both() + writing_.log(prefixes_[prefix].writing), prefix);
    const auto end_of_kept = scores.begin() + static_cast<std::ptrdiff_t>(beam_);
    std::nth_element(scores.begin(), end_of_kept, scores.end(), std::greater<>());
    for (auto lost = end_of_kept; lost != scores.end(); ++lost)
        masses_.erase(lost->second);
}

std::vector<SearchedLine> Search::lines() const
{
    std::vector<SearchedLine> lines;
    for (const auto& [id, mass] : masses_) {
        SearchedLine line;
        line.log_score =
            mass.both() + writing_.log(writing_.added(prefixes_[id].writing, prefixes_[id].kinds,
                                                      WritingModel::line_end));
        for (std::size_t at = id; at != 0; at = prefixes_[at].before)
            line.classes.push_back(prefixes_[at].last);
        std::reverse(line.classes.begin(), line.classes.end());
        lines.push_back(std::move(line));
    }
    std::sort(lines.begin(), lines.end(), [](const SearchedLine& a, const SearchedLine& b) {
        return a.log_score != b.log_score ? a.log_score > b.log_score : a.classes < b.classes;
    });
    return lines;
}

}  // namespace

double logSum(double a, double b)
{
    const double more = std::max(a, b);
    if (more == never)
        return never;
    return more + std::log1p(std::exp(std::min(a, b) - more));
}

WritingWeight::WritingWeight(const LineClasses& classes, const WritingModel* model, double weight)
    : model_(weight > 0 ? model : nullptr),
      weight_(weight),
      kinds_(static_cast<std::size_t>(classes.count()), WritingModel::unknown)
{
    for (std::size_t i = 0; i < classes.characters.size(); ++i)
        kinds_[i + 1] = WritingModel::kindOf(classes.characters[i]);
}

WritingSums WritingWeight::added(WritingSums sums, std::string_view before, char kind) const
{
    if (model_) {
        sums.marks += model_->logRatio(before, kind);
        sums.codes += model_->logRatioInCodes(kind);
    }
    return sums;
}

double WritingWeight::log(const WritingSums& sums) const
{
    return weight_ *
           logSum(std::log(1 - share_of_codes) + sums.marks, std::log(share_of_codes) + sums.codes);
}

std::string WritingWeight::kindsOf(const std::vector<int>& line) const
{
    std::string kinds = WritingModel::lineBegin();
    for (const int of_class : line)
        kinds += kindOf(of_class);
    return kinds + WritingModel::line_end;
}

WritingSums WritingWeight::ofLine(const std::vector<int>& line) const
{
    const std::string kinds = kindsOf(line);
    WritingSums sums;
    for (std::size_t i = 1; i < kinds.size(); ++i)
        sums = added(sums, std::string_view(kinds).substr(0, i), kinds[i]);
    return sums;
}

// The terms that change with what stands at a place.
WritingSums WritingWeight::around(const std::string& kinds, std::size_t at) const
{
    WritingSums sums;
    for (std::size_t i = at; i < kinds.size() && i <= at + reach(); ++i)
        sums = added(sums, std::string_view(kinds).substr(0, i), kinds[i]);
    return sums;
}

std::vector<WritingSums> WritingWeight::withClasses(const std::vector<int>& line,
                                                    const WritingSums& sums, std::size_t place,
                                                    const std::vector<int>& asked) const
{
    std::string kinds = kindsOf(line);
    const WritingSums before = around(kinds, place + 1);
    std::unordered_map<char, WritingSums> by_kind{{kinds[place + 1], sums}};  // classes share kinds
    std::vector<WritingSums> with;
    with.reserve(asked.size());
    for (const int of_class : asked) {
        const auto [known, is_new] = by_kind.try_emplace(kindOf(of_class));
        if (is_new) {
            kinds[place + 1] = kindOf(of_class);
            const WritingSums after = around(kinds, place + 1);
            known->second = {sums.marks - before.marks + after.marks,
                             sums.codes - before.codes + after.codes};
        }
        with.push_back(known->second);
    }
    return with;
}

std::vector<SearchedLine> likeliestLines(const cv::Mat& log_shares, const WritingWeight& writing,
                                         int beam)
{
    Search search(log_shares, writing, beam);
    for (int t = 0; t < log_shares.rows; ++t)
        search.step(t);
    return search.lines();
}

}  // namespace vision
