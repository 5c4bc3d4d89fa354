#include "models/candidate_reasons.h"

#include <algorithm>
#include <cmath>
#include <iomanip>
#include <sstream>

#include "models/typed_notation.h"
#include "models/year_reasons.h"
#include "models/year_weights.h"

namespace models {

namespace {

constexpr double nearly_as_well = 1.1;  // natural log of a factor 3
constexpr double most_times = 1000;     // a factor is told exactly up to here
constexpr std::size_t most_rivals_named = 3;

std::string countInWords(std::size_t count)
{
    static constexpr const char* words[] = {"no",  "one",   "two",   "three", "four", "five",
                                            "six", "seven", "eight", "nine",  "ten"};
    return count <= 10 ? words[count] : std::to_string(count);
}

// ": for it, 25 times", of a factor's logarithm; nothing where it is about 1.
std::string weightInWords(double weight)
{
    if (std::abs(weight) < worth_telling)
        return {};
    const double times = std::exp(std::min(std::abs(weight), std::log(most_times)));
    std::ostringstream text;
    text << (weight > 0 ? ": for it, " : ": against it, ");
    if (times >= most_times)
        text << "over a thousand times";
    else if (times < 10)
        text << std::fixed << std::setprecision(1) << times << " times";
    else
        text << std::lround(times) << " times";
    return text.str();
}

class ReasonTeller {
public:
    ReasonTeller(const MakerPosterior& maker, const Posterior& posterior,
                 const ItemEvidence& evidence, const std::vector<StampEvidence>& stamps,
                 const MakerRegister& known, const CompiledRegister& compiled)
        : maker_(maker),
          posterior_(posterior),
          evidence_(evidence),
          stamps_(stamps),
          known_(known),
          compiled_(compiled)
    {
    }

    std::vector<std::string> tell(const CandidateOptions& options);

private:
    const Maker& registered() const { return known_.makers[maker_.maker]; }
    bool nothingRead() const;
    std::string lettersOf(std::size_t stamp, const MarkPlace& place) const;
    std::string markWithYears() const;

    void tellLetters();
    void tellRivals();
    void tellRivals(std::vector<const MakerPosterior*> rivals, const std::string& fit);
    void tellType();
    void tellArchive(const CandidateOptions& options);
    void add(double weight, std::string text)
    {
        if (std::abs(weight) >= worth_telling)
            reasons_.push_back({weight, std::move(text)});
    }

    const MakerPosterior& maker_;
    const Posterior& posterior_;
    const ItemEvidence& evidence_;
    const std::vector<StampEvidence>& stamps_;
    const MakerRegister& known_;
    const CompiledRegister& compiled_;
    std::vector<Reason> reasons_;  // each with its weight
    std::vector<Reason> rivals_;  // no factors of their own: told in order of how much they explain
};

bool ReasonTeller::nothingRead() const
{
    return std::all_of(stamps_.begin(), stamps_.end(),
                       [](const StampEvidence& stamp) { return stamp.isEmpty(); });
}

// The line (or two) in the typed notation, shortened.
std::string ReasonTeller::lettersOf(std::size_t stamp, const MarkPlace& place) const
{
    std::vector<Line> lines;
    for (const Line& line : evidence_.stamps[stamp].lines)
        if (!line.cells.empty())
            lines.push_back(line);
    const auto first = lines.begin() + static_cast<long>(place.first_line);
    const auto end = lines.begin() + static_cast<long>(place.end_line);
    return writeTyped(std::vector<Line>(first, end));
}

std::string ReasonTeller::markWithYears() const
{
    const CompiledMark& mark = compiled_.marks[maker_.best_mark];
    const std::string years = yearsInWords(mark.from, mark.to);
    return years.empty() ? mark.text : mark.text + " (known " + years + ")";
}

void ReasonTeller::tellLetters()
{
    if (!maker_.has_marks) {
        add(1, "the register has no mark of this maker to compare with");
        return;
    }
    std::size_t best_stamp = 0;
    MarkPlace best;
    for (std::size_t s = 0; s < stamps_.size(); ++s) {
        const MarkPlace place = stamps_[s].bestPlace(maker_.best_mark);
        if (place.odds > best.odds) {
            best = place;
            best_stamp = s;
        }
    }
    // Against what the letters say of all makers together.
    const double factor =
        maker_.lettersFactor() - (posterior_.log_all_joint - posterior_.log_all_markless);
    if (maker_.lettersFactor() <= 0 || best.odds <= 0) {
        // Told only where the letters speak for somebody else.
        add(std::min(0.0, factor), "no line that was read fits a mark of this maker");
        return;
    }
    add(factor, "the letters " + lettersOf(best_stamp, best) +
                    (factor > 0 ? " fit the mark " : " fit others better than the mark ") +
                    markWithYears());
}

// Others whose marks the letters fit as well or better; the maker's own years decide then.
void ReasonTeller::tellRivals()
{
    const double own = maker_.lettersFactor();
    if (own < worth_telling)
        return;
    std::vector<const MakerPosterior*> better, equal;
    for (const MakerPosterior& other : posterior_.makers)
        if (other.maker != maker_.maker && other.has_marks &&
            other.lettersFactor() > own - nearly_as_well)
            (other.lettersFactor() > own + nearly_as_well ? better : equal).push_back(&other);
    tellRivals(std::move(better), "better");
    tellRivals(std::move(equal), "nearly as well");
}

void ReasonTeller::tellRivals(std::vector<const MakerPosterior*> rivals, const std::string& fit)
{
    if (rivals.empty())
        return;
    std::sort(rivals.begin(), rivals.end(),
              [](const auto* a, const auto* b) { return a->probability > b->probability; });
    std::string text =
        countInWords(rivals.size()) +
        (rivals.size() == 1 ? " other maker's mark fits " : " other makers' marks fit ") + fit +
        ": ";
    for (std::size_t i = 0; i < rivals.size() && i < most_rivals_named; ++i)
        text.append(i == 0 ? "" : ", ").append(compiled_.marks[rivals[i]->best_mark].text);
    if (rivals.size() > most_rivals_named)
        text += ", ...";
    rivals_.push_back({-std::log(1 + static_cast<double>(rivals.size())), text});
}

void ReasonTeller::tellType()
{
    const ItemType* type = evidence_.type_id.empty() ? nullptr : known_.itemType(evidence_.type_id);
    const std::string own = yearsInWords(registered().from, registered().to);
    if (!type || own.empty())
        return;
    double sum = 0, shares = 0;
    for (const MakerPosterior& maker : posterior_.makers) {
        sum += maker.share * maker.type_fit;
        shares += maker.share;
    }
    const double factor = std::log(maker_.type_fit / (sum / shares));
    add(factor, "the maker's years (" + own + ")" + (factor > 0 ? " suit" : " hardly suit") +
                    " the item type " + type->nameWithPattern() + " (" +
                    yearsInWords(type->introduced, type->withdrawn) + ")");
}

void ReasonTeller::tellArchive(const CandidateOptions& options)
{
    const auto count = options.archive_counts.find(registered().maker_id);
    if (options.archive_counts.empty())
        return;
    const double factor = std::log(maker_.share * static_cast<double>(known_.makers.size()));
    const auto items =
        count == options.archive_counts.end() ? 0L : std::lround(std::max(0.0, count->second));
    add(factor, "the archive holds " + countInWords(static_cast<std::size_t>(items)) +
                    (items == 1 ? " item" : " items") + " of this maker");
}

std::vector<std::string> ReasonTeller::tell(const CandidateOptions& options)
{
    if (!nothingRead()) {
        tellLetters();
        tellRivals();
        if (auto years = yearReason(maker_, posterior_, known_, compiled_))
            reasons_.push_back(std::move(*years));
        if (auto years = markYearReason(maker_, posterior_, compiled_))
            add(years->weight, std::move(years->text));
    }
    tellType();
    tellArchive(options);
    for (Reason& reason : reasons_)
        reason.text += weightInWords(reason.weight);
    reasons_.insert(reasons_.end(), rivals_.begin(), rivals_.end());
    std::stable_sort(reasons_.begin(), reasons_.end(), [](const Reason& a, const Reason& b) {
        return std::abs(a.weight) > std::abs(b.weight);
    });
    std::vector<std::string> texts;
    for (Reason& reason : reasons_)
        texts.push_back(std::move(reason.text));
    if (texts.empty())
        texts.push_back(nothingRead() ? "nothing was read: this is how likely the maker is unseen"
                                      : "what was read speaks neither for nor against this maker");
    return texts;
}

}  // namespace

std::vector<std::string> reasonsFor(const MakerPosterior& maker, const Posterior& posterior,
                                    const ItemEvidence& evidence,
                                    const std::vector<StampEvidence>& stamps,
                                    const MakerRegister& known, const CompiledRegister& compiled,
                                    const CandidateOptions& options)
{
    return ReasonTeller(maker, posterior, evidence, stamps, known, compiled).tell(options);
}

}  // namespace models
