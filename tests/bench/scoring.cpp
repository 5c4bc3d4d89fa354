#include "tests/bench/scoring.h"

#include <algorithm>
#include <tuple>

#include <opencv2/imgproc.hpp>

namespace bench {

namespace {

using metrics::lettersAndDigits;

// Common area over the smaller one, 0 to 1.
double sharedPlace(const vision::Quad& a, const vision::Quad& b)
{
    const std::vector<cv::Point2f> p(a.begin(), a.end()), q(b.begin(), b.end());
    std::vector<cv::Point2f> common;
    const double area = cv::intersectConvexConvex(p, q, common);
    return area / std::max(1.0, std::min(cv::contourArea(p), cv::contourArea(q)));
}

constexpr double lies_on = 0.5;

struct Pair {
    std::size_t truth = 0, read = 0;
    double edits = 0, overlap = 0;

    bool operator<(const Pair& other) const
    {
        return std::tuple(edits, -overlap, truth, read) <
               std::tuple(other.edits, -other.overlap, other.truth, other.read);
    }
};

double editsPerLetter(const std::string& read, const std::string& truth)
{
    const std::u32string wanted = lettersAndDigits(truth);
    const auto edits = metrics::editDistance(lettersAndDigits(read), wanted);
    return static_cast<double>(edits) / std::max(1.0, static_cast<double>(wanted.size()));
}

std::vector<Pair> pairsByPlace(const Picture& picture, const ReadPicture& read)
{
    std::vector<Pair> pairs;
    for (std::size_t t = 0; t < picture.lines.size(); ++t)
        for (std::size_t r = 0; r < read.lines.size(); ++r) {
            const LabelledLine& truth = picture.lines[t];
            const ReadLine& line = read.lines[r];
            if (sharedPlace(line.corners, truth.corners) >= lies_on)
                pairs.push_back({t, r, editsPerLetter(models::plainText(line.line), truth.text),
                                 overlapOf(line.corners, truth.corners)});
        }
    std::sort(pairs.begin(), pairs.end());
    return pairs;
}

void addCells(const models::Line& line, const std::string& truth,
              std::vector<metrics::Judged>& judged)
{
    std::u32string letters;
    std::vector<double> certainties;
    for (const models::Cell& cell : line.cells) {
        if (cell.alternatives.empty() || cell.state == models::CellState::Traces ||
            cell.state == models::CellState::Lost)
            continue;
        for (const char32_t letter : lettersAndDigits(cell.alternatives.front().text)) {
            letters += letter;
            certainties.push_back(cell.alternatives.front().certainty);
        }
    }
    const std::u32string wanted = lettersAndDigits(truth);
    const auto partners = metrics::partnersOf(letters, wanted);
    for (std::size_t i = 0; i < letters.size(); ++i)
        judged.push_back({certainties[i], partners[i] && wanted[*partners[i]] == letters[i]});
}

void addLine(Score& score, const Picture& picture, const ReadPicture& read, const Verdict& verdict)
{
    const models::Line* line = verdict.read ? &read.lines[*verdict.read].line : nullptr;
    const std::string truth = verdict.truth ? picture.lines[*verdict.truth].text : "";
    if (verdict.truth) {
        ++score.lines;
        score.exact += verdict.right ? 1 : 0;
        const std::string text = line != nullptr ? models::plainText(*line) : "";
        score.characters +=
            metrics::characterErrors(lettersAndDigits(text), lettersAndDigits(truth));
    } else {
        ++score.false_lines;
    }
    if (line != nullptr) {
        score.judged_lines.push_back({models::lineCertainty(*line), verdict.right});
        addCells(*line, truth, score.judged_cells);
    }
}

int rankOf(const std::string& maker, const models::CandidateList& list)
{
    for (std::size_t i = 0; i < list.candidates.size(); ++i)
        if (list.candidates[i].maker_id == maker)
            return static_cast<int>(i) + 1;
    return 0;
}

// Whether a line lies where one that was taken for a true line does.
bool repeatsOne(const ReadLine& line, const ReadPicture& read, const std::vector<Verdict>& verdicts)
{
    return std::any_of(verdicts.begin(), verdicts.end(), [&](const Verdict& verdict) {
        return verdict.read &&
               sharedPlace(line.corners, read.lines[*verdict.read].corners) >= lies_on;
    });
}

}  // namespace

std::vector<Verdict> judge(const Picture& picture, const ReadPicture& read)
{
    const std::vector<Pair> pairs = pairsByPlace(picture, read);
    std::vector<Verdict> verdicts(picture.lines.size());
    for (std::size_t t = 0; t < verdicts.size(); ++t)
        verdicts[t].truth = t;
    std::vector<bool> taken(read.lines.size());
    for (const Pair& pair : pairs) {
        Verdict& verdict = verdicts[pair.truth];
        if (taken[pair.read] || verdict.read)
            continue;
        taken[pair.read] = true;
        verdict.read = pair.read;
        verdict.right = folded(models::plainText(read.lines[pair.read].line)) ==
                        folded(picture.lines[pair.truth].text);
    }
    std::vector<Verdict> false_lines;
    for (std::size_t r = 0; r < read.lines.size(); ++r)
        if (!taken[r] && (picture.all_labelled || repeatsOne(read.lines[r], read, verdicts)))
            false_lines.push_back({{}, r, false});
    verdicts.insert(verdicts.end(), false_lines.begin(), false_lines.end());
    return verdicts;
}

Score scoreOf(const std::vector<Picture>& pictures, const std::vector<ReadPicture>& reads)
{
    Score score;
    score.pictures = pictures.size();
    for (std::size_t i = 0; i < pictures.size(); ++i) {
        const Picture& picture = pictures[i];
        score.all_labelled = score.all_labelled && picture.all_labelled;
        const std::vector<Verdict> verdicts = judge(picture, reads[i]);
        for (const Verdict& verdict : verdicts)
            addLine(score, picture, reads[i], verdict);
        score.misled += std::any_of(verdicts.begin(), verdicts.end(), [&](const Verdict& v) {
            return !v.truth && models::lineCertainty(reads[i].lines[*v.read].line) >= 0.5;
        });
        if (picture.maker)
            score.maker_ranks.push_back(rankOf(*picture.maker, reads[i].candidates));
    }
    return score;
}

}  // namespace bench
